package browser

import (
	"cmp"
	"slices"

	"ledgewright/engine/rank"
	"ledgewright/wasm/app"
)

// statesKept is how many states of a job are kept beside the last.
const statesKept = 20

// A stored is one kept state of a job, without its record.
type stored struct {
	revision int
	blank    bool // nothing is in it yet
}

// stale returns the revisions that may go, of all that are kept: those before the last
// [statesKept]. The last one that has something in it stays, however many blank ones
// came after it.
func stale(all []stored) (gone []int) {
	rank.By(all, func(a, b stored) int { return b.revision - a.revision })
	full := slices.IndexFunc(all, func(s stored) bool { return !s.blank })
	for i, s := range all {
		if i >= statesKept && i != full {
			gone = append(gone, s.revision)
		}
	}
	return gone
}

// mayFollow reports whether a state that was made from revision before may be stored
// over the one that is stored now: nobody else has stored one in between. Own is the
// last revision that this page stored, 0 for none.
func mayFollow(now, before, own int) bool {
	return now == before || own > 0 && now == own
}

// A dated job, by the moment at which it was stored, in ms since 1970.
type dated struct {
	at  float64
	job app.Listing
}

// newestFirst orders jobs by when they were stored; of one moment by their ids.
func newestFirst(all []dated) []app.Listing {
	rank.By(all, func(a, b dated) int {
		return cmp.Or(cmp.Compare(b.at, a.at), cmp.Compare(a.job.ID, b.job.ID))
	})
	var jobs []app.Listing
	for _, d := range all {
		jobs = append(jobs, d.job)
	}
	return jobs
}
