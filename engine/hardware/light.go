package hardware

import "ledgewright/engine/unit"

// A Strip is a light strip: chips on a tape, cut between groups.
type Strip struct {
	ID      string
	Volts   float64
	Watts   float64 // for each metre
	Chips   int     // for each metre
	Group   int     // chips between two cuts
	Width   unit.Length
	Loop    float64     // ohms for each metre, there and back
	Longest unit.Length // fed at one end
	Basis   Basis
}

// CutUnit returns the length between two places where a strip may be cut.
func (s Strip) CutUnit() unit.Length { return unit.Metre.MulDiv(int64(s.Group), int64(s.Chips)) }

// FindStrip returns the strip with the given id, and whether there is one.
func FindStrip(id string) (Strip, bool) {
	for _, s := range strips() {
		if s.ID == id {
			return s, true
		}
	}
	return Strip{}, false
}

// Strips returns every strip, 24 V before 12 V, weakest first.
func Strips() []Strip { s := strips(); return s[:] }

// strips holds the strips: id, volts, watts a metre, chips a metre, chips a group,
// width, loop, longest run, basis.
//
// Power classes and chips are those that wiring guides for strips list; 3 chips a group
// at 12 V and 6 at 24 V, fed at one end up to 5 m and 10 m, likewise. The loop is our
// assumption: two copper tracks 70 µm thick, each half of the tape less 2 mm wide, at
// 0.017241 Ω mm²/m (IEC 60028).
func strips() [10]Strip {
	return [...]Strip{
		{"strip-24-4.8", 24, 4.8, 60, 6, 8 * mm, 0.164, 10 * unit.Metre, Practice},
		{"strip-24-7.2", 24, 7.2, 30, 6, 10 * mm, 0.123, 10 * unit.Metre, Practice},
		{"strip-24-9.6", 24, 9.6, 120, 6, 8 * mm, 0.164, 10 * unit.Metre, Practice},
		{"strip-24-14.4", 24, 14.4, 60, 6, 10 * mm, 0.123, 10 * unit.Metre, Practice},
		{"strip-24-19.2", 24, 19.2, 240, 6, 10 * mm, 0.123, 10 * unit.Metre, Practice},
		{"strip-24-24", 24, 24, 240, 6, 12 * mm, 0.099, 10 * unit.Metre, Practice},
		{"strip-12-4.8", 12, 4.8, 60, 3, 8 * mm, 0.164, 5 * unit.Metre, Practice},
		{"strip-12-7.2", 12, 7.2, 30, 3, 10 * mm, 0.123, 5 * unit.Metre, Practice},
		{"strip-12-9.6", 12, 9.6, 120, 3, 8 * mm, 0.164, 5 * unit.Metre, Practice},
		{"strip-12-14.4", 12, 14.4, 60, 3, 10 * mm, 0.123, 5 * unit.Metre, Practice},
	}
}

// What a strip gives as light, for all kinds. Strips for joinery are sold at 80 to 100
// lumens a watt and 2 700 K for living rooms; an opal cover passes 60 to 80 % of it.
// Common practice; the figures are our assumption. They come to 300 to 1 500 lm/m, within
// what the trade asks of shelf lights (330 to 660 lm/m to look at, 1 000 to 2 000 to work
// by).
const (
	StripEfficacy = 90.0   // lm/W
	CoverPasses   = 0.7    // of the light
	WarmWhite     = 2700.0 // K
)

// TapeThick is how high a strip stands with its chips. Our assumption.
const TapeThick = 2 * mm

// A Source feeds a strip: a driver on the mains, or a battery.
type Source struct {
	ID         string
	Volts      float64
	Watts      float64 // what it gives
	WattHours  float64 // of a battery; 0: a driver
	Efficiency float64 // of a battery with its converter
	Discharge  float64 // share of a battery that is used
	Basis      Basis
}

// FindSource returns the driver or battery with the given id, and whether there is one.
func FindSource(id string) (Source, bool) {
	for _, s := range sources() {
		if s.ID == id {
			return s, true
		}
	}
	return Source{}, false
}

// Sources returns every driver and battery, drivers first, weakest first.
func Sources() []Source { s := sources(); return s[:] }

// sources holds drivers and batteries by power class. Drivers end at 96 W for 24 V and
// 60 W for 12 V, the classes sold as limited power sources (NEC 725 and chapter 9, table
// 11, 100 VA; the steps below it are the trade's). Efficiency 0.9 and discharge 0.8 are
// common practice for lithium packs, what a pack gives is our assumption.
func sources() [9]Source {
	return [...]Source{
		{"driver-24-15", 24, 15, 0, 0, 0, Practice},
		{"driver-24-30", 24, 30, 0, 0, 0, Practice},
		{"driver-24-60", 24, 60, 0, 0, 0, Practice},
		{"driver-24-96", 24, 96, 0, 0, 0, Practice},
		{"driver-12-15", 12, 15, 0, 0, 0, Practice},
		{"driver-12-30", 12, 30, 0, 0, 0, Practice},
		{"driver-12-60", 12, 60, 0, 0, 0, Practice},
		{"battery-12-3ah", 12, 24, 36, 0.9, 0.8, Assumed},
		{"battery-12-7ah", 12, 36, 84, 0.9, 0.8, Assumed},
	}
}

// A Channel is an aluminium profile that holds a strip in a groove.
type Channel struct {
	ID     string
	Groove unit.Length // width of the groove for its body, play not counted
	Deep   unit.Length // height of its body
	Flange unit.Length // over all, where a flange covers the groove's edges; 0: none
	Inside unit.Length // widest strip
	Basis  Basis
}

// Channels returns every channel.
func Channels() []Channel {
	return []Channel{
		{"channel-12x7", 12 * mm, 7 * mm, 0, 10 * mm, Assumed},
		{"channel-17x7", 17 * mm, 7 * mm, 0, 12 * mm, Practice},
		{"channel-17x7-flanged", 17 * mm, 7 * mm, 24 * mm, 12 * mm, Practice},
		{"channel-16x16-corner", 16 * mm, 16 * mm, 0, 10 * mm, Practice},
	}
}
