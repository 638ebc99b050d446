package words

// movementWords are the words of package movement.
func movementWords() []Entry {
	return []Entry{
		{"finding.mitre-opens", "{module}: {n} {n|mitre|mitres} would open by more than {limit} if nothing holds {n|it|them}; the widest is {value}, at corner {corner} {side}."},
		{"finding.housing-opens", "{module}: {divider} needs {way} of free way beside it in its housings; between damp and dry a gap of {value} comes and goes. Over {limit} it is seen."},
		{"finding.movement-not-checked", "{module}: how {value} moves with moisture is not known; what opens between shop and house is not checked."},

		{"movement.heel", "on the inside as the wood dries"},
		{"movement.toe", "on the outside as the wood swells"},

		{"remedy.saw-flat", "Take flat-sawn boards for this job; the gap is then {left} at most."},
		{"remedy.work-at-moisture", "Bring the wood to {value} % of moisture before it is planed; the gap is then {left} at most."},
		{"remedy.reinforce-and-seal", "Set a spline of the same wood and seal every face: that holds and slows it, and is not reckoned here."},
		{"remedy.shoulder-the-divider", "Cut a shoulder on the divider that covers its housing."},
		{"remedy.accept-the-gap", "Take it as it is: let gaps up to {left} pass."},
		{"remedy.choose-wood-that-is-known", "Choose a wood whose movement is known, or ask the timber yard for its figures."},
	}
}
