package app

// A Painting is how the picture is painted: plainly, as part of the document, or by the
// graphics processor, on the stage.
type Painting struct {
	Asked string // by the address: "stage", "svg", or nothing
	Shown bool   // the stage paints it now
	why   string // it does not
}

// Picture is what the picture is to be painted by: "stage", "svg", or nothing where the
// page is to find out what is best.
func (s *State) Picture() string {
	if s.Painted.Asked != "" {
		return s.Painted.Asked
	}
	return s.Settings.Picture
}

// WhyPlain is why the stage does not paint the picture: "address" or "chosen" where that
// is wanted, else what the browser has said; empty before it has.
func (s *State) WhyPlain() string {
	switch {
	case s.Painted.Asked == "svg":
		return "address"
	case s.Settings.Picture == "svg" && s.Painted.Asked == "":
		return "chosen"
	}
	return s.Painted.why
}
