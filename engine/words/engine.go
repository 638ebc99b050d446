package words

// engineWords are the words of package engine: verdicts, and what no single room can say.
func engineWords() []Entry {
	return []Entry{
		{"verdict.fits.ok", "Clear all round. Nearest gap: {gap}"},
		{"verdict.fits.empty", "No module yet"},
		{"verdict.fits.unplaced", "No module hangs on a wall yet"},
		{"verdict.fits.note", "Clear all round, {n} {n|note|notes}"},
		{"verdict.fits.unknown", "{n} {n|thing|things} about the wall not known: not checked"},
		{"verdict.fits.mend", "{n} {n|thing|things} to put right before it fits"},
		{"verdict.fits.stop", "Does not fit: {n} {n|thing stops|things stop} the job"},
		{"verdict.holds.empty", "No module yet"},
		{"verdict.holds.reckoning", "Reckoning"},
		{"verdict.holds.unknown", "Not checked: what each shelf can carry"},
		{"verdict.holds.mend", "Does not hold yet: {n} {n|thing|things} to put right"},
		{"verdict.holds.stop", "Does not hold: {n} {n|thing stops|things stop} the job"},
		{"verdict.takes.ok", "{boards} {boards|board|boards}, {mass} of wood"},
		{"verdict.takes.note", "{n} {n|note|notes} on making"},
		{"verdict.takes.unknown", "{n} {n|thing|things} about making not checked"},
		{"verdict.takes.mend", "{n} {n|thing|things} to put right before it is made"},
		{"verdict.takes.stop", "Cannot be made so: {n} {n|thing stops|things stop} the job"},

		{"finding.holds-not-checked", "{arrangement}: what each shelf can carry is not checked."},
		{"remedy.have-it-judged", "Have the fixings and the load judged by someone who may, before it is loaded."},
		{"finding.newer-plan", "This plan was written by a newer version ({schema}): it can be looked at, not changed."},
		{"remedy.newer-program", "Open it with the newer version to change it."},
	}
}
