package light

import (
	"math"

	"ledgewright/engine/hardware"
	"ledgewright/engine/unit"
)

const (
	resistivity = 0.017241 // Ω mm²/m, annealed copper at 20 °C, IEC 60028
	leadSection = 0.75     // mm², our assumption
	reserve     = 0.8      // share of what a source gives that is used, common practice
	mostDrop    = 0.03     // of the supply, as wiring guides ask
	warm        = 10.0     // W/m above which a strip wants metal round it, common practice
)

// leadDrop returns the volts lost in a lead l metres long, there and back.
func leadDrop(l, section, current float64) float64 { return 2 * resistivity * l * current / section }

// stripDrop returns the volts lost at the end of a strip fed at one end, evenly loaded.
func stripDrop(loop, l, current float64) float64 { return loop * l * current / 2 }

// bothDrop returns the volts lost in the middle of a strip fed at both ends.
func bothDrop(loop, l, current float64) float64 { return loop * l * current / 8 }

// longest returns the length of strip that a source feeds with its reserve, in metres.
func longest(source, watts float64) float64 { return source * reserve / watts }

// runHours returns how long a battery feeds a load.
func runHours(s hardware.Source, watts float64) float64 {
	if watts <= 0 {
		return 0
	}
	return s.WattHours * s.Efficiency * s.Discharge / watts
}

// feed works out power and drop, and asks whether the source serves.
func (j *job) feed(kind hardware.Strip) {
	s := &j.out.Strip
	long := s.Length.MM() / 1000
	watts := kind.Watts * long
	current := watts / kind.Volts
	s.Watts, s.Supply = unit.Power(watts), kind.Volts
	lead := leadDrop(j.Lead.MM()/1000, leadSection, current)
	s.Drop = lead + stripDrop(kind.Loop, long, current)
	j.checkStrip(kind)
	j.checkDrop(kind, lead+bothDrop(kind.Loop, long, current))
	if j.Source == "" {
		j.noSource(kind)
		return
	}
	source, ok := hardware.FindSource(j.Source)
	if !ok {
		j.unknownSource(kind)
		return
	}
	s.RunHours = runHours(source, watts)
	s.SourceLoad = watts / reserve / source.Watts
	j.checkSource(kind, source)
}

// driver returns the smallest driver for the strip, or "".
func (j *job) driver(kind hardware.Strip) string {
	for _, d := range hardware.Sources() {
		if d.WattHours == 0 && d.Volts == kind.Volts && d.Watts*reserve >= float64(j.out.Strip.Watts) {
			return d.ID
		}
	}
	return ""
}

// tenth rounds a figure for a text.
func tenth(x float64) float64 { return math.Round(x*10) / 10 }

// hundredth rounds volts for a text.
func hundredth(x float64) float64 { return math.Round(x*100) / 100 }
