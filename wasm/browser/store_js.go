package browser

import (
	"cmp"
	"syscall/js"

	format "ledgewright/engine/document" // "document" is the browser's here
	"ledgewright/wasm/app"
)

// The browser's database: "jobs" holds for each job which state is its last, "states"
// the last states of each job, "settings" what outlives the jobs.
const (
	databaseName    = "ledgewright"
	databaseVersion = 1

	jobsStore     = "jobs"     // {id, title, summary, revision, blank, at}
	statesStore   = "states"   // {job, revision, blank, record}
	settingsStore = "settings" // {name, text}
)

// openWithin is how long the start waits for the database, in ms: some browsers never
// answer where storage is turned off.
const openWithin = 2000

// A store is the database. Without one nothing is kept, and the page says so.
type store struct {
	w         *window
	db        js.Value
	own       map[string]int // last revision that this page stored, by job
	persisted bool           // the browser was asked to keep what is stored
}

// open opens the database and calls start with what it holds, once.
func (s *store) open(start func([]app.Listing, app.Settings, string)) {
	begun := false
	begin := func(jobs []app.Listing, settings app.Settings, last string) {
		if !begun {
			begun = true
			start(jobs, settings, last)
		}
	}
	nothing := func() { begin(nil, app.Settings{}, "") }
	var request js.Value
	if try(func() { request = s.w.Get("indexedDB").Call("open", databaseName, databaseVersion) }) != "" {
		nothing()
		return
	}
	s.w.timer("database", openWithin, nothing)
	s.w.once(request, map[string]func(js.Value){"upgradeneeded": func(js.Value) { create(request.Get("result")) }})
	s.w.once(request, map[string]func(js.Value){
		"error": func(js.Value) { nothing() },
		"success": func(js.Value) {
			s.db = request.Get("result")
			s.w.on(s.db, "versionchange", func(js.Value) { s.db.Call("close"); s.db = js.Undefined() })
			s.first(begin, nothing)
		},
	})
}

// create makes the stores of a new database.
func create(db js.Value) {
	db.Call("createObjectStore", jobsStore, map[string]any{"keyPath": "id"})
	db.Call("createObjectStore", statesStore, map[string]any{"keyPath": []any{"job", "revision", "blank"}})
	db.Call("createObjectStore", settingsStore, map[string]any{"keyPath": "name"})
}

// first reads what the page starts with.
func (s *store) first(begin func([]app.Listing, app.Settings, string), nothing func()) {
	tx, why := s.begin("readonly")
	if why != "" {
		nothing()
		return
	}
	jobs := tx.Call("objectStore", jobsStore).Call("getAll")
	settings := tx.Call("objectStore", settingsStore).Call("get", "settings")
	last := tx.Call("objectStore", settingsStore).Call("get", "last")
	s.w.once(tx, map[string]func(js.Value){
		"abort": func(js.Value) { nothing() },
		"complete": func(js.Value) {
			var known app.Settings
			if format.Decode([]byte(textOf(settings.Get("result"))), &known) != nil {
				known = app.Settings{} // of none, none
			}
			begin(s.listings(jobs.Get("result")), known, textOf(last.Get("result")))
		},
	})
}

func textOf(row js.Value) string {
	if !row.Truthy() {
		return ""
	}
	return row.Get("text").String()
}

// begin opens a transaction over all stores, or says in words why not.
func (s *store) begin(mode string) (tx js.Value, why string) {
	if !s.db.Truthy() {
		return tx, word("browser.store-none")
	}
	thrown := try(func() {
		tx = s.db.Call("transaction", []any{jobsStore, statesStore, settingsStore}, mode, map[string]any{"durability": "strict"})
	})
	return tx, reason(thrown)
}

// reason returns in words why a browser did not store, nothing for nothing.
func reason(name string) string {
	switch name {
	case "":
		return ""
	case "QuotaExceededError":
		return word("browser.store-full")
	case "InvalidStateError", "SecurityError", "NotFoundError":
		return word("browser.store-none")
	}
	return name
}

// states is the range of all states of a job: lists come after numbers.
func (s *store) states(id string) js.Value {
	return s.w.Get("IDBKeyRange").Call("bound", []any{id}, []any{id, []any{}})
}

// keep stores a state of a job: the record first, then the job that points at it, in one
// transaction, so that a job never points at a record that is not there.
func (s *store) keep(k app.Keep) {
	tx, why := s.begin("readwrite")
	if why != "" {
		s.kept(k, why)
		return
	}
	conflict, thrown := false, ""
	job := tx.Call("objectStore", jobsStore).Call("get", k.ID)
	s.w.once(job, map[string]func(js.Value){"error": func(js.Value) {}, "success": func(js.Value) {
		now := 0
		if row := job.Get("result"); row.Truthy() {
			now = row.Get("revision").Int()
		}
		if conflict = !mayFollow(now, k.Before, s.own[k.ID]) || k.Record == ""; conflict {
			tx.Call("abort")
			return
		}
		s.own[k.ID] = k.Revision
		if thrown = try(func() { s.put(tx, k) }); thrown != "" {
			tx.Call("abort")
		}
	}})
	s.w.once(tx, map[string]func(js.Value){
		"complete": func(js.Value) { s.kept(k, "") },
		"abort": func(js.Value) {
			why := word("browser.store-changed")
			if !conflict {
				if why = reason(cmp.Or(thrown, nameOf(tx.Get("error")))); why == "" {
					why = word("browser.store-none")
				}
			}
			s.kept(k, why)
		},
	})
}

func (s *store) put(tx js.Value, k app.Keep) {
	blank := 0
	if k.Blank {
		blank = 1
	}
	states := tx.Call("objectStore", statesStore)
	states.Call("put", map[string]any{"job": k.ID, "revision": k.Revision, "blank": blank, "record": k.Record})
	tx.Call("objectStore", jobsStore).Call("put", map[string]any{
		"id": k.ID, "title": k.Title, "summary": k.Summary, "revision": k.Revision, "blank": blank,
		"at": s.w.Get("Date").Call("now"),
	})
	s.setLast(tx, k.ID)
	s.prune(states, k.ID)
}

// prune removes the states that may go.
func (s *store) prune(states js.Value, id string) {
	keys := states.Call("getAllKeys", s.states(id))
	s.w.once(keys, map[string]func(js.Value){"error": func(js.Value) {}, "success": func(js.Value) {
		list := keys.Get("result")
		all := make([]stored, list.Length())
		byRevision := map[int]js.Value{}
		for i := range all {
			key := list.Index(i)
			all[i] = stored{revision: key.Index(1).Int(), blank: key.Index(2).Int() == 1}
			byRevision[all[i].revision] = key
		}
		for _, gone := range stale(all) {
			states.Call("delete", byRevision[gone])
		}
	}})
}

func (s *store) setLast(tx js.Value, id string) {
	tx.Call("objectStore", settingsStore).Call("put", map[string]any{"name": "last", "text": id})
}

// kept says how keeping ended. After the first time that it worked the browser is asked
// not to throw away what is stored.
func (s *store) kept(k app.Keep, why string) {
	s.w.loop.Send(app.Kept{Revision: k.Revision, Now: s.w.now(), Err: why})
	if why == "" && !s.persisted {
		s.persisted = true
		s.ask("persist")
	}
}

// ask asks the browser whether what is stored is "persisted", or to "persist" it, and
// passes its answer on. One that cannot be asked may delete it.
func (s *store) ask(what string) {
	tell := func(lasts bool) { s.w.loop.Send(app.Persisted{Lasts: lasts}) }
	manager := s.w.Get("navigator").Get("storage")
	if !manager.Truthy() || !manager.Get(what).Truthy() {
		tell(false)
		return
	}
	s.w.then(manager.Call(what), func(v js.Value) { tell(v.Truthy()) }, func(string) { tell(false) })
}

// list sends the list of jobs. Who looks at the list has left the job that was open.
func (s *store) list() {
	tx, why := s.begin("readwrite")
	if why != "" {
		s.w.loop.Send(app.Listed{})
		return
	}
	jobs := tx.Call("objectStore", jobsStore).Call("getAll")
	s.setLast(tx, "")
	s.w.once(tx, map[string]func(js.Value){
		"complete": func(js.Value) { s.w.loop.Send(app.Listed{Jobs: s.listings(jobs.Get("result"))}) },
		"abort":    func(js.Value) { s.w.loop.Send(app.Listed{}) },
	})
}

// listings reads rows of jobs, the one stored last first.
func (s *store) listings(rows js.Value) []app.Listing {
	out := make([]dated, rows.Length())
	for i := range out {
		r := rows.Index(i)
		at := r.Get("at").Float()
		out[i] = dated{at, app.Listing{
			ID: r.Get("id").String(), Title: r.Get("title").String(), Summary: r.Get("summary").String(), At: s.date(at),
		}}
	}
	return newestFirst(out)
}

// date writes a moment: today's by its time, others by their day.
func (s *store) date(at float64) string {
	d := s.w.Get("Date").New(at)
	if dayOf(d) == s.w.today() {
		return timeOf(d)
	}
	return dayOf(d)
}

// read sends a job's last state, or if that is not there the newest that is.
func (s *store) read(id string) {
	tx, why := s.begin("readwrite")
	if why != "" {
		s.w.loop.Send(app.Read{ID: id, Err: why})
		return
	}
	record := ""
	states := tx.Call("objectStore", statesStore)
	job := tx.Call("objectStore", jobsStore).Call("get", id)
	newest := states.Call("openCursor", s.states(id), "prev")
	s.w.once(newest, map[string]func(js.Value){"error": func(js.Value) {}, "success": func(js.Value) {
		if at := newest.Get("result"); at.Truthy() {
			record = at.Get("value").Get("record").String()
		}
		if row := job.Get("result"); row.Truthy() {
			s.own[id] = row.Get("revision").Int()
			s.pointed(states, row, &record)
		}
	}})
	s.setLast(tx, id)
	end := func(js.Value) {
		if record == "" {
			s.w.loop.Send(app.Read{ID: id, Err: word("browser.store-gone")})
			return
		}
		s.w.loop.Send(app.Read{ID: id, Record: record})
	}
	s.w.once(tx, map[string]func(js.Value){"complete": end, "abort": end})
}

// pointed reads the state that a job points at.
func (s *store) pointed(states, row js.Value, record *string) {
	last := states.Call("get", []any{row.Get("id"), row.Get("revision"), row.Get("blank")})
	s.w.once(last, map[string]func(js.Value){"error": func(js.Value) {}, "success": func(js.Value) {
		if r := last.Get("result"); r.Truthy() {
			*record = r.Get("record").String()
		}
	}})
}

func (s *store) forget(id string) {
	tx, why := s.begin("readwrite")
	if why != "" {
		return
	}
	delete(s.own, id)
	tx.Call("objectStore", jobsStore).Call("delete", id)
	tx.Call("objectStore", statesStore).Call("delete", s.states(id))
}

func (s *store) keepSettings(settings app.Settings) {
	tx, why := s.begin("readwrite")
	if why != "" {
		return
	}
	text, err := format.Encode(settings)
	if err != nil {
		panic(err) // settings are plain strings
	}
	tx.Call("objectStore", settingsStore).Call("put", map[string]any{"name": "settings", "text": string(text)})
}
