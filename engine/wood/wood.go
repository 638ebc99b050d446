// Package wood holds the species that shelves are made of: density, stiffness,
// strength, movement with moisture, and how they look.
//
// Specific gravity at the moisture content x, on ovendry mass and volume at x, from
// the basic specific gravity Gb, and the density that follows:
//
//	Gx = Gb / (1 − 0.265 Gb (1 − x/30))     ρx = 1000 Gx (1 + x/100)  kg/m³
//
// Wood Handbook, FPL-GTR-190 (2010), eq. 4-9, 4-13 and 4-14, for x from 0 to 30 %.
// Equilibrium moisture content stands in moisture.go, movement in movement.go.
package wood

import (
	"sync"

	"ledgewright/engine/unit"
)

// fibreSaturation is the moisture content in percent above which wood no longer
// swells, as eq. 4-9 takes it.
const fibreSaturation = 30

// A Species is one wood: its figures and its look.
type Species struct {
	Facts
	Look Look
}

// Facts are the figures of a species. Stiffness and strength are means of clear wood
// at 12 % moisture, not design values.
type Facts struct {
	ID               string
	Name             string // common name
	Botanical        string
	Group            Group
	GBasic           float64       // specific gravity, ovendry mass on green volume
	G12              float64       // specific gravity, ovendry mass on volume at 12 %
	Density          unit.Density  // at 12 %
	MOE              unit.Pressure // in bending, at 12 %
	MOR              unit.Pressure // in bending, at 12 %
	TensionAcross    unit.Pressure // in tension across the grain, at 12 %; 0: no figure
	ShrinkRadial     float64       // percent, green to ovendry
	ShrinkTangential float64
	CR               float64 // radial movement, part of the size for each percent of moisture; 0: no figure
	CT               float64 // likewise tangential
	Sources          Sources
}

// A Group is the part of the handbook in which a species stands.
type Group string

// The groups.
const (
	Hardwood Group = "hardwood"
	Softwood Group = "softwood"
	Imported Group = "imported"
)

// Sources say how each group of figures of a species is known.
type Sources struct {
	GBasic, Strength, Shrinkage, Movement, TensionAcross Basis
}

// A Basis says how a figure is known.
type Basis string

// The bases.
const (
	Read    Basis = "read"    // seen in the printed table
	Memory  Basis = "memory"  // the table's figure as we know it, not seen in print
	Derived Basis = "derived" // worked out from figures of the same row
	Gap     Basis = "gap"     // no figure
)

// Find returns the species with the given id, and whether there is one.
func Find(id string) (Species, bool) {
	if i := find(id); i >= 0 {
		return complete(rows()[i], i), true
	}
	return Species{}, false
}

// Known reports whether there is a species called id.
func Known(id string) bool { return find(id) >= 0 }

// find returns the row of a species, or −1.
func find(id string) int {
	t := rows()
	for i := range t {
		if t[i].ID == id {
			return i
		}
	}
	return -1
}

// All returns every species: hardwoods, softwoods, imported woods.
func All() []Species {
	t := rows()
	out := make([]Species, len(t))
	for i := range t {
		out[i] = complete(t[i], i)
	}
	return out
}

// rows holds the table, made on first need: nobody writes to it.
var rows = sync.OnceValue(func() []Facts {
	t := table()
	return t[:]
})

// complete gives row i its look, and its specific gravity at 12 % where the handbook
// prints only the basic one.
func complete(f Facts, i int) Species {
	if f.G12 == 0 {
		f.G12 = SpecificGravity(f.GBasic, 12)
	}
	return Species{Facts: f, Look: looks()[i].look}
}

// SpecificGravity returns the specific gravity at mc percent of moisture, on ovendry
// mass and volume at mc, of wood whose basic specific gravity is gb. Moisture above
// 30 % counts as 30 %, below 0 as 0.
func SpecificGravity(gb, mc float64) float64 {
	return gb / (1 - float64(0.265*gb*swelling(mc)))
}

// DensityAt returns the density at mc percent of moisture. It goes through the basic
// specific gravity that belongs to the species' density at 12 %, so that DensityAt(12)
// is the printed figure.
func (f Facts) DensityAt(mc float64) unit.Density {
	g12 := float64(f.Density) / 1120
	gb := g12 / (1 + float64(0.265*g12*swelling(12)))
	return unit.Density(1000 * SpecificGravity(gb, mc) * (1 + max(mc, 0)/100))
}

// swelling returns 1 − x/30 within the range of the formula.
func swelling(mc float64) float64 {
	return 1 - min(max(mc, 0), fibreSaturation)/fibreSaturation
}
