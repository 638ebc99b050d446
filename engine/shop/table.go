package shop

import (
	"ledgewright/engine/document"
	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
)

// The table of defaults, group by group: path, field, metric, inches, least, most,
// basis, reason, source.
//
// Pages and books behind the rows marked as cited:
const (
	hiddenRods  = "Fine Homebuilding, Hidden shelf connections, September 1981: 1/2 in rod, 3 in in the stud, 5 in in the shelf"
	floating    = "Wikipedia, Floating shelf: 12 mm rods in boards of 22 mm and more, 18 mm rods in 28 mm and more"
	sizingParts = "gnhw.org, question archive, Sizing parts: rough part 1 in over length, 1/2 in over width; a second maker 1 to 6 in and 1/4 to 3/8 in"
	lightPasses = "Wood Magazine, Light passes minimize tear-out: 1/8 in a pass"
	thirds      = "Canadian Woodworking, 10 woodworking rules of thumb: the rule of thirds"
	emcHandbook = "Wood Handbook, FPL-GTR-190 (2010), table 4-2 and its equation: 6.2 % at 21 °C and 30 % relative humidity, 11 % at 60 %"
)

func length(path string, at func(*Profile) *unit.Length, metric, inches, least, most unit.Length, b Basis, reason, source string) Row {
	return Row{Path: path, Metric: metric, Inches: inches, Least: least, Most: most, Basis: b, Reason: reason, Source: source,
		at: func(p *Profile) any { return at(p) }}
}

func count(path string, at func(*Profile) *int, n, least, most int, b Basis, reason, source string) Row {
	return Row{Path: path, Metric: n, Inches: n, Least: least, Most: most, Basis: b, Reason: reason, Source: source,
		at: func(p *Profile) any { return at(p) }}
}

func percent(path string, at func(*Profile) *float64, x float64, b Basis, reason, source string) Row {
	return Row{Path: path, Metric: x, Inches: x, Least: 2.0, Most: 25.0, Basis: b, Reason: reason, Source: source,
		at: func(p *Profile) any { return at(p) }}
}

func choice(path string, at func(*Profile) *string, s string, of []string, b Basis, reason, source string) Row {
	return Row{Path: path, Metric: s, Inches: s, Choice: of, Basis: b, Reason: reason, Source: source,
		at: func(p *Profile) any { return at(p) }}
}

func yes(path string, at func(*Profile) *bool, reason string) Row {
	return Row{Path: path, Metric: true, Inches: true, Basis: Assumed, Reason: reason,
		at: func(p *Profile) any { return at(p) }}
}

func tapeRows() []Row {
	return []Row{
		{Path: "name", Metric: "", Inches: "", Basis: Assumed, Reason: "the maker types it",
			at: func(p *Profile) any { return &p.Name }},
		{Path: "system", Metric: unit.Metric, Inches: unit.Inches, Choice: []string{string(unit.Metric), string(unit.Inches)},
			Basis: Assumed, Reason: "the system of the plan it was made for", at: func(p *Profile) any { return &p.System }},
		length("tape.bench", func(p *Profile) *unit.Length { return &p.Tape.Bench }, mm/2, in/32, mm/20, 5*mm,
			Practice, "half a division of a workshop rule can be set by eye", ""),
		length("tape.site", func(p *Profile) *unit.Length { return &p.Tape.Site }, mm, in/16, mm/10, 10*mm,
			Practice, "one division of a tape held against a wall", ""),
	}
}

func coverRows() []Row {
	return []Row{
		length("covers.pocket", func(p *Profile) *unit.Length { return &p.Covers.Pocket }, 3*mm, in/8, mm/2, 50*mm,
			Practice, "thinner wood beside a pocket breaks out under the router", ""),
		length("covers.bore", func(p *Profile) *unit.Length { return &p.Covers.Bore }, 6*mm, in/4, mm, 50*mm,
			Cited, "a board is about 10 mm thicker than its rod; half of that, and a little for wander, on each side", floating),
		length("covers.boreToSlot", func(p *Profile) *unit.Length { return &p.Covers.BoreToSlot }, 3*mm, in/8, mm/2, 50*mm,
			Practice, "so that a long bore that wanders 1 mm still stays closed", ""),
		length("covers.boreToHeel", func(p *Profile) *unit.Length { return &p.Covers.BoreToHeel }, 20*mm, in*13/16, 0, 200*mm,
			Assumed, "short grain at the inside of a mitre splits when a rod bears near it", ""),
		length("covers.pocketToHeel", func(p *Profile) *unit.Length { return &p.Covers.PocketToHeel }, 10*mm, in*3/8, 0, 200*mm,
			Assumed, "a pocket must not open into the mitre", ""),
		length("covers.slot", func(p *Profile) *unit.Length { return &p.Covers.Slot }, 5*mm, in*3/16, mm/2, 50*mm,
			Practice, "a spline or tenon shows through thinner wood as the glue dries", ""),
		length("covers.slotThin", func(p *Profile) *unit.Length { return &p.Covers.SlotThin }, 3*mm, in/8, mm/2, 50*mm,
			Practice, "thin boards leave no room for more", ""),
		length("covers.thin", func(p *Profile) *unit.Length { return &p.Covers.Thin }, 20*mm, in*13/16, 0, 100*mm,
			Practice, "boards under this keep the smaller cover", ""),
		length("covers.front", func(p *Profile) *unit.Length { return &p.Covers.Front }, 25*mm, in, mm, 500*mm,
			Practice, "wood in front of a rod's tip carries what leans on the front edge", ""),
		length("covers.plate", func(p *Profile) *unit.Length { return &p.Covers.Plate }, mm, in/32, 0, 10*mm,
			Practice, "a plate must drop into its pocket without force, on each side", ""),
	}
}

func rodRows() []Row {
	return []Row{
		length("rods.slackWelded", func(p *Profile) *unit.Length { return &p.Rods.SlackWelded }, mm/2, in/32, 0, 10*mm,
			Practice, "rods of one welded bar cannot be set apart wrongly", ""),
		length("rods.slackSingle", func(p *Profile) *unit.Length { return &p.Rods.SlackSingle }, mm, in/16, 0, 10*mm,
			Practice, "0.5 mm off in place and a quarter of a degree over 120 mm of rod come to 1 mm", ""),
		length("rods.deeper", func(p *Profile) *unit.Length { return &p.Rods.Deeper }, 5*mm, in*3/16, 0, 50*mm,
			Practice, "a board gets narrower as it dries and must never ride on the rods' tips", ""),
		count("rods.inStudDiameters", func(p *Profile) *int { return &p.Rods.InStudDiameters }, 6, 2, 20,
			Cited, "a 1/2 in rod sits 3 in deep", hiddenRods),
		length("rods.inStudLeast", func(p *Profile) *unit.Length { return &p.Rods.InStudLeast }, 75*mm, 3*in, 10*mm, 300*mm,
			Cited, "3 in deep", hiddenRods),
	}
}

func bracketRows() []Row {
	return []Row{
		choice("brackets.kind", func(p *Profile) *string { return &p.Brackets.Kind }, "rod-structure", nil,
			Cited, "a rod set in the stud carries most of what can be hidden in a board", hiddenRods),
		choice("brackets.rule", func(p *Profile) *string { return &p.Brackets.Rule }, RuleStuds, []string{RuleStuds, RuleOverhang, RuleFixed},
			Practice, "find the studs first and set the brackets from them", ""),
		length("brackets.fixed", func(p *Profile) *unit.Length { return &p.Brackets.Fixed }, 125*mm, 5*in, 0, 2000*mm,
			Practice, "marks 5 in from each end", ""),
		count("brackets.overhang", func(p *Profile) *int { return &p.Brackets.Overhang }, 4, 2, 20,
			Practice, "a longer overhang lifts the board off the far rod when it is loaded", ""),
		count("brackets.firstDiameters", func(p *Profile) *int { return &p.Brackets.FirstDiameters }, 4, 1, 20,
			Practice, "the end distance of timber codes, four diameters, keeps an end from splitting", ""),
	}
}

func jointRows() []Row {
	return []Row{
		{Path: "joints.splineThickness", Metric: document.Opt[unit.Length]{}, Inches: document.Opt[unit.Length]{}, Least: mm, Most: 20 * mm,
			Basis: Practice, Reason: "left open: a sixth of the thinner board, 4 mm in 24 mm stock",
			at: func(p *Profile) any { return &p.Joints.SplineThickness }},
		length("joints.splineHeel", func(p *Profile) *unit.Length { return &p.Joints.SplineHeel }, 6*mm, in/4, mm, 50*mm,
			Practice, "near the inside of the mitre, where the slot can be deepest", ""),
		length("joints.splinePlay", func(p *Profile) *unit.Length { return &p.Joints.SplinePlay }, mm, in/32, 0, 10*mm,
			Practice, "a spline as wide as both slots are deep holds the mitre open", ""),
		length("joints.tenonPitch", func(p *Profile) *unit.Length { return &p.Joints.TenonPitch }, 150*mm, 6*in, 20*mm, 500*mm,
			Practice, "two tenons in a board 200 mm deep", ""),
		length("joints.tenonEdge", func(p *Profile) *unit.Length { return &p.Joints.TenonEdge }, 30*mm, in*5/4, 5*mm, 200*mm,
			Practice, "25 to 40 mm from the edges", ""),
		length("joints.dowelPitch", func(p *Profile) *unit.Length { return &p.Joints.DowelPitch }, 75*mm, 3*in, 16*mm, 500*mm,
			Assumed, "three dowels in a board 200 mm deep", ""),
		length("joints.keyPitch", func(p *Profile) *unit.Length { return &p.Joints.KeyPitch }, 65*mm, in*5/2, 10*mm, 500*mm,
			Practice, "three keys in a board 200 mm deep", ""),
		length("joints.keyInside", func(p *Profile) *unit.Length { return &p.Joints.KeyInside }, 6*mm, in/4, mm, 50*mm,
			Practice, "a key must not show on the inside of the corner", ""),
		length("joints.screwPitch", func(p *Profile) *unit.Length { return &p.Joints.ScrewPitch }, 100*mm, 4*in, 20*mm, 500*mm,
			Assumed, "two to three screws in a board 200 mm deep", ""),
		count("joints.housingDepthPart", func(p *Profile) *int { return &p.Joints.HousingDepthPart }, 3, 2, 20,
			Cited, "a housing takes a third of the board", thirds),
	}
}

func grooveRows() []Row {
	return []Row{
		count("grooves.deepestPart", func(p *Profile) *int { return &p.Grooves.DeepestPart }, 3, 2, 20,
			Cited, "a groove takes a third of the board; across the grain 30 % of the stiffness is left there", thirds),
		length("grooves.fromFront", func(p *Profile) *unit.Length { return &p.Grooves.FromFront }, 20*mm, in*13/16, 0, 500*mm,
			Practice, "a narrower strip in front of a groove breaks off under a hand", ""),
		length("grooves.stopShown", func(p *Profile) *unit.Length { return &p.Grooves.StopShown }, 15*mm, in*5/8, 0, 500*mm,
			Practice, "an end that shows stays whole", ""),
		length("grooves.stopJoint", func(p *Profile) *unit.Length { return &p.Grooves.StopJoint }, 40*mm, in*13/8, 0, 500*mm,
			Practice, "clear of the mitre and of what reinforces it", ""),
		length("grooves.pass", func(p *Profile) *unit.Length { return &p.Grooves.Pass }, 3*mm, in/8, mm/2, 30*mm,
			Cited, "deeper passes tear", lightPasses),
		length("grooves.channelPlay", func(p *Profile) *unit.Length { return &p.Grooves.ChannelPlay }, mm/5, in/64, 0, 5*mm,
			Practice, "a channel is pressed in by hand", ""),
	}
}

func gapRows() []Row {
	return []Row{
		length("gaps.touching", func(p *Profile) *unit.Length { return &p.Gaps.Touching }, 3*mm, in/8, 0, 50*mm,
			Practice, "modules hung one by one never meet without a gap", ""),
		length("gaps.apart", func(p *Profile) *unit.Length { return &p.Gaps.Apart }, 20*mm, in*13/16, 0, 1000*mm,
			Practice, "a smaller gap looks like a mistake", ""),
		length("gaps.frame", func(p *Profile) *unit.Length { return &p.Gaps.Frame }, 5*mm, in*3/16, 0, 500*mm,
			Practice, "side walls and frames are not plumb", ""),
		length("gaps.ceiling", func(p *Profile) *unit.Length { return &p.Gaps.Ceiling }, 50*mm, 2*in, 0, 2000*mm,
			Practice, "room for the drill and for a hand", ""),
		length("gaps.inFront", func(p *Profile) *unit.Length { return &p.Gaps.InFront }, 20*mm, in*13/16, 0, 1000*mm,
			Practice, "a module slides straight out over the whole rod, and a little more", ""),
		length("gaps.socket", func(p *Profile) *unit.Length { return &p.Gaps.Socket }, 150*mm, 6*in, 0, 2000*mm,
			Assumed, "room for a plug and for the cable beside it", ""),
	}
}

func stockRows() []Row {
	return []Row{
		length("stock.length", func(p *Profile) *unit.Length { return &p.Stock.Length }, 50*mm, 2*in, 0, 500*mm,
			Cited, "end checks and snipe are cut away", sizingParts),
		length("stock.width", func(p *Profile) *unit.Length { return &p.Stock.Width }, 8*mm, in*5/16, 0, 100*mm,
			Cited, "one edge to joint, the other to rip and plane", sizingParts),
		length("stock.thickness", func(p *Profile) *unit.Length { return &p.Stock.Thickness }, 6*mm, in/4, 0, 50*mm,
			Practice, "rough stock loses 3/16 to 1/4 in as it is planed from both faces", ""),
		length("stock.sanding", func(p *Profile) *unit.Length { return &p.Stock.Sanding }, mm*3/10, in/64, 0, 3*mm,
			Practice, "0.2 to 0.4 mm a face from the planer to grit 180", ""),
		length("stock.kerf", func(p *Profile) *unit.Length { return &p.Stock.Kerf }, mm*32/10, in/8, mm/2, 10*mm,
			Practice, "a full-kerf blade of a table saw; measure your own on scrap", ""),
		{Path: "stock.thicknesses", Metric: []unit.Length{20 * mm, 26 * mm, 32 * mm, 44 * mm},
			Inches: []unit.Length{in * 13 / 16, in * 33 / 32, in * 5 / 4, in * 7 / 4}, Least: 6 * mm, Most: 150 * mm,
			Basis: Practice, Reason: "what 4/4, 5/4, 6/4 and 8/4 stock planes to",
			at: func(p *Profile) any { return &p.Stock.Thicknesses }},
	}
}

func machineRows() []Row {
	return []Row{
		yes("machines.saw.tiltsLeft", func(p *Profile) *bool { return &p.Machines.Saw.TiltsLeft },
			"decides which face lies on the table; look at your saw"),
		yes("machines.saw.stopRight", func(p *Profile) *bool { return &p.Machines.Saw.StopRight },
			"decides which end meets the stop; look at your saw"),
		{Path: "machines.saw.maxTilt", Metric: 45 * deg, Inches: 45 * deg, Least: unit.Angle(0), Most: 60 * deg, Basis: Practice,
			Reason: "most saws tilt to 45°, some to 47°", at: func(p *Profile) any { return &p.Machines.Saw.MaxTilt }},
		length("machines.saw.heightAt45", func(p *Profile) *unit.Length { return &p.Machines.Saw.HeightAt45 }, 60*mm, in*9/4, 10*mm, 300*mm,
			Assumed, "what a 250 mm blade reaches when it is tilted; measure yours", ""),
		length("machines.saw.crosscut", func(p *Profile) *unit.Length { return &p.Machines.Saw.Crosscut }, 300*mm, 12*in, 50*mm, 3000*mm,
			Assumed, "widest board that the saw crosses; measure yours", ""),
		length("machines.saw.stopReach", func(p *Profile) *unit.Length { return &p.Machines.Saw.StopReach }, 2000*mm, 80*in, 100*mm, 6000*mm,
			Assumed, "longest board that a stop can be set for; measure yours", ""),
		length("machines.drillStroke", func(p *Profile) *unit.Length { return &p.Machines.DrillStroke }, 80*mm, in*25/8, 20*mm, 500*mm,
			Assumed, "a bench drill press; deeper bores are finished with a jig and a hand drill", ""),
		length("machines.wander", func(p *Profile) *unit.Length { return &p.Machines.Wander }, mm, in*3/64, 0, 10*mm,
			Assumed, "a hand drill in a jig over 125 mm; measure yours on scrap", ""),
	}
}

func moistureRows() []Row {
	return []Row{
		percent("moisture.shop", func(p *Profile) *float64 { return &p.Moisture.Shop }, 8,
			Cited, "wood for heated rooms is worked at 6 to 10 %", emcHandbook),
		percent("moisture.useLow", func(p *Profile) *float64 { return &p.Moisture.UseLow }, 6,
			Cited, "a heated room in winter", emcHandbook),
		percent("moisture.useHigh", func(p *Profile) *float64 { return &p.Moisture.UseHigh }, 11,
			Cited, "the same room in a damp summer", emcHandbook),
		choice("moisture.sawn", func(p *Profile) *string { return &p.Moisture.Sawn }, "",
			[]string{string(wood.AnySawing), string(wood.FlatSawn), string(wood.QuarterSawn)},
			Assumed, "left open: boards may be sawn either way, and the greater movement counts", ""),
		{Path: "moisture.seen", Metric: document.Opt[unit.Length]{}, Inches: document.Opt[unit.Length]{}, Least: mm / 20, Most: MostSeen,
			Basis: Assumed, Reason: "left open: 0.5 mm, a dark line that is seen at arm's length",
			at: func(p *Profile) any { return &p.Moisture.Seen }},
	}
}
