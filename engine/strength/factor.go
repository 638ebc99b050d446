package strength

// A Factor is one figure that a rule takes as given, with where it comes from.
type Factor struct {
	Key    string // of the words "factor.<key>"
	Value  float64
	Unit   string // empty: a plain number
	Source string
	Basis  Basis
}

// A Basis says how well a figure is known.
type Basis string

// The bases.
const (
	Read       Basis = "read"       // seen in print
	Memory     Basis = "memory"     // known, not seen
	Assumption Basis = "assumption" // ours
)

// Factors lists every figure of this package, rule by rule. The rules use the same
// constants.
func Factors() []Factor {
	return []Factor{
		{"duration-permanent", float64(Permanent), "", "NDS 2018, table 2.3.2", Memory},
		{"duration-ten-years", float64(TenYears), "", "NDS 2018, table 2.3.2", Memory},
		{"duration-minutes", float64(Minutes), "", "NDS 2018, table 2.3.2", Memory},
		{"k-mod-permanent", KmodPermanent, "", "EN 1995-1-1, table 3.1", Read},
		{"k-mod-instant", KmodInstant, "", "EN 1995-1-1, table 3.1", Read},
		{"gamma-m", GammaM, "", "EN 1995-1-1, table 2.3", Memory},
		{"load-factor", LoadFactorEN, "", "EN 1990, table A1.2(B)", Memory},
		{"across-strength", tensionAcross, "MPa", "EN 338, f_t,90,k of the hardwood classes", Read},
		{"across-crushing", crushingAcross, "MPa", "EN 338 (2016), f_c,90,k of D30 to D40", Memory},
		{"spread-at-rod", spreadAtRod, "", "held against orthotropic plates", Assumption},
		{"spread-at-groove", spreadAtGroove, "", "held against orthotropic plates", Assumption},
		{"room-part", roomPart, "", "held against orthotropic plates", Assumption},
		{"hand-part", HandPart, "", "held against orthotropic plates", Assumption},
		{"rib-takes", ribTakes, "", "held against orthotropic plates", Assumption},
		{"rib-reach", RibReach, "mm", "held against orthotropic plates", Assumption},
		{"steel-yield", PlainSteel, "MPa", "EN 10025, S235 up to 16 mm", Memory},
		{"steel-factor", SteelFactor, "", "AISC 360, chapter F", Memory},
		{"steel-e", SteelE, "MPa", "EN 1993-1-1, 3.2.6", Memory},
		{"steel-g", SteelG, "MPa", "EN 1993-1-1, 3.2.6", Memory},
		{"thin-dowel", thinDowel, "mm", "NDS 2018, table 12.3.3", Read},
		{"hollow-anchor", HollowAnchorFactor, "", "common practice", Memory},
		{"masonry-test", MasonryTestFactor, "", "our assumption", Assumption},
		{"lining-crushes", LiningCrushes, "MPa", "gypsum board under a small plate", Memory},
		{"lining-hollow", LiningHollow, "MPa", "a quarter of what crushes it", Assumption},
		{"lining-backed", LiningBacked, "MPa", "a half of what crushes it", Assumption},
		{"heel-height", HeelHeight, "mm", "our assumption", Assumption},
		{"least-pair", LeastPair, "mm", "our assumption", Assumption},
		{"mitre-plain", MitrePlain, "MPa", "a quarter of what small tests broke at", Assumption},
		{"mitre-splined", MitreSplined, "MPa", "a quarter of what small tests broke at", Assumption},
		{"corner-test", ShopTestFactor, "", "our assumption", Assumption},
		{"corner-test-count", ShopTestLeast, "", "our assumption", Assumption},
	}
}
