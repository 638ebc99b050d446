package wood

const (
	gpa = 1e9
	mpa = 1e6
)

// table holds the woods, one a line.
//
// Basic and 12 % specific gravity, stiffness and bending strength: Wood Handbook,
// FPL-GTR-190 (2010), tables 5-3a and 5-3b; imported woods table 5-5b, whose specific
// gravity is the basic one only, so that their density at 12 % follows from
// [SpecificGravity]. Shrinkage green to ovendry: tables 4-3 and 4-4. Coefficients of
// movement: table 13-5, where the oaks are the commercial groups; rows marked Derived
// have (S/3000)/(1 − S/150), which is eq. 13-3 at 10 % and reproduces the printed
// hardwood rows. Tension across the grain: the 2021 edition, FPL-GTR-282, table 5-3a, of the
// woods of which we saw the row; it prints none for sugar maple. A row marked Memory was
// not seen in print by us: check it before use.
//
// Density is in kg/m³ at 12 %, shrinkage in percent, movement in parts of the size for
// one percent of moisture; 0 stands for a figure that the tables do not have.
func table() [46]Facts {
	return [...]Facts{
		{"red-alder", "Red alder", "Alnus rubra", Hardwood, 0.37, 0.41, 459.2, 9.5 * gpa, 68.0 * mpa, 0, 4.4, 7.3, 0.00151, 0.00256, Sources{Memory, Read, Read, Read, Gap}},
		{"black-ash", "Black ash", "Fraxinus nigra", Hardwood, 0.45, 0.49, 548.8, 11.0 * gpa, 87.0 * mpa, 0, 5.0, 7.8, 0.00172, 0.00274, Sources{Memory, Read, Read, Read, Gap}},
		{"white-ash", "White ash", "Fraxinus americana", Hardwood, 0.55, 0.6, 672, 12.0 * gpa, 103.0 * mpa, 6.5 * mpa, 4.9, 7.8, 0.00169, 0.00274, Sources{Read, Read, Read, Read, Read}},
		{"quaking-aspen", "Quaking aspen", "Populus tremuloides", Hardwood, 0.35, 0.38, 425.6, 8.1 * gpa, 58.0 * mpa, 0, 3.5, 6.7, 0.00119, 0.00234, Sources{Memory, Read, Read, Read, Gap}},
		{"basswood", "American basswood", "Tilia americana", Hardwood, 0.32, 0.37, 414.4, 10.1 * gpa, 60.0 * mpa, 0, 6.6, 9.3, 0.0023, 0.0033, Sources{Memory, Read, Read, Read, Gap}},
		{"american-beech", "American beech", "Fagus grandifolia", Hardwood, 0.56, 0.64, 716.8, 11.9 * gpa, 103.0 * mpa, 0, 5.5, 11.9, 0.0019, 0.00431, Sources{Memory, Read, Read, Read, Gap}},
		{"paper-birch", "Paper birch", "Betula papyrifera", Hardwood, 0.48, 0.55, 616, 11.0 * gpa, 85.0 * mpa, 0, 6.3, 8.6, 0.00219, 0.00304, Sources{Memory, Read, Read, Read, Gap}},
		{"sweet-birch", "Sweet birch", "Betula lenta", Hardwood, 0.6, 0.65, 728, 15.0 * gpa, 117.0 * mpa, 0, 6.5, 9.0, 0.00256, 0.00338, Sources{Memory, Read, Read, Read, Gap}},
		{"yellow-birch", "Yellow birch", "Betula alleghaniensis", Hardwood, 0.55, 0.62, 694.4, 13.9 * gpa, 114.0 * mpa, 0, 7.3, 9.5, 0.00256, 0.00338, Sources{Memory, Read, Read, Read, Gap}},
		{"butternut", "Butternut", "Juglans cinerea", Hardwood, 0.36, 0.38, 425.6, 8.1 * gpa, 56.0 * mpa, 0, 3.4, 6.4, 0.00116, 0.00223, Sources{Memory, Read, Read, Read, Gap}},
		{"black-cherry", "Black cherry", "Prunus serotina", Hardwood, 0.47, 0.5, 560, 10.3 * gpa, 85.0 * mpa, 3.9 * mpa, 3.7, 7.1, 0.00126, 0.00248, Sources{Read, Read, Read, Read, Read}},
		{"chestnut", "American chestnut", "Castanea dentata", Hardwood, 0.4, 0.43, 481.6, 8.5 * gpa, 59.0 * mpa, 0, 3.4, 6.7, 0.00116, 0.00234, Sources{Memory, Read, Read, Read, Gap}},
		{"american-elm", "American elm", "Ulmus americana", Hardwood, 0.46, 0.5, 560, 9.2 * gpa, 81.0 * mpa, 0, 4.2, 9.5, 0.00144, 0.00338, Sources{Memory, Read, Read, Read, Gap}},
		{"hackberry", "Hackberry", "Celtis occidentalis", Hardwood, 0.49, 0.53, 593.6, 8.2 * gpa, 76.0 * mpa, 0, 4.8, 8.9, 0.00165, 0.00315, Sources{Memory, Read, Read, Read, Gap}},
		{"pecan", "Pecan (pecan hickory)", "Carya illinoinensis", Hardwood, 0.6, 0.66, 739.2, 11.9 * gpa, 94.0 * mpa, 0, 4.9, 8.9, 0.00169, 0.00315, Sources{Memory, Read, Read, Read, Gap}},
		{"shagbark-hickory", "Shagbark hickory (true hickory)", "Carya ovata", Hardwood, 0.64, 0.72, 806.4, 14.9 * gpa, 139.0 * mpa, 0, 7.0, 10.5, 0.00259, 0.00411, Sources{Memory, Read, Memory, Memory, Gap}},
		{"black-locust", "Black locust", "Robinia pseudoacacia", Hardwood, 0.66, 0.69, 772.8, 14.1 * gpa, 134.0 * mpa, 0, 4.6, 7.2, 0.00158, 0.00252, Sources{Memory, Read, Memory, Read, Gap}},
		{"bigleaf-maple", "Bigleaf maple", "Acer macrophyllum", Hardwood, 0.44, 0.48, 537.6, 10.0 * gpa, 74.0 * mpa, 0, 3.7, 7.1, 0.00126, 0.00248, Sources{Memory, Read, Memory, Read, Gap}},
		{"red-maple", "Red maple", "Acer rubrum", Hardwood, 0.49, 0.54, 604.8, 11.3 * gpa, 92.0 * mpa, 0, 4.0, 8.2, 0.00137, 0.00289, Sources{Memory, Read, Memory, Read, Gap}},
		{"silver-maple", "Silver maple", "Acer saccharinum", Hardwood, 0.44, 0.47, 526.4, 7.9 * gpa, 61.0 * mpa, 0, 3.0, 7.2, 0.00102, 0.00252, Sources{Memory, Read, Memory, Read, Gap}},
		{"sugar-maple", "Sugar (hard) maple", "Acer saccharum", Hardwood, 0.56, 0.63, 705.6, 12.6 * gpa, 109.0 * mpa, 0, 4.8, 9.9, 0.00165, 0.00353, Sources{Read, Read, Read, Read, Gap}},
		{"northern-red-oak", "Northern red oak", "Quercus rubra", Hardwood, 0.56, 0.63, 705.6, 12.5 * gpa, 99.0 * mpa, 5.5 * mpa, 4.0, 8.6, 0.00158, 0.00369, Sources{Read, Read, Read, Read, Read}},
		{"white-oak", "White oak", "Quercus alba", Hardwood, 0.6, 0.68, 761.6, 12.3 * gpa, 105.0 * mpa, 5.5 * mpa, 5.6, 10.5, 0.0018, 0.00365, Sources{Read, Read, Read, Read, Read}},
		{"sweetgum", "Sweetgum", "Liquidambar styraciflua", Hardwood, 0.46, 0.52, 582.4, 11.3 * gpa, 86.0 * mpa, 0, 5.3, 10.2, 0.00183, 0.00365, Sources{Memory, Read, Read, Read, Gap}},
		{"sycamore", "American sycamore", "Platanus occidentalis", Hardwood, 0.46, 0.49, 548.8, 9.8 * gpa, 69.0 * mpa, 0, 5.0, 8.4, 0.00172, 0.00296, Sources{Memory, Read, Read, Read, Gap}},
		{"black-walnut", "Black walnut", "Juglans nigra", Hardwood, 0.51, 0.55, 616, 11.6 * gpa, 101.0 * mpa, 0, 5.5, 7.8, 0.0019, 0.00274, Sources{Memory, Read, Read, Read, Gap}},
		{"yellow-poplar", "Yellow-poplar (tulipwood)", "Liriodendron tulipifera", Hardwood, 0.4, 0.42, 470.4, 10.9 * gpa, 70.0 * mpa, 3.7 * mpa, 4.6, 8.2, 0.00158, 0.00289, Sources{Read, Read, Read, Memory, Read}},
		{"eastern-white-pine", "Eastern white pine", "Pinus strobus", Softwood, 0.34, 0.35, 392, 8.5 * gpa, 59.0 * mpa, 0, 2.1, 6.1, 0.00071, 0.00212, Sources{Memory, Read, Memory, Memory, Gap}},
		{"ponderosa-pine", "Ponderosa pine", "Pinus ponderosa", Softwood, 0.38, 0.4, 448, 8.9 * gpa, 65.0 * mpa, 0, 3.9, 6.2, 0.00133, 0.00216, Sources{Read, Read, Memory, Memory, Gap}},
		{"sugar-pine", "Sugar pine", "Pinus lambertiana", Softwood, 0.34, 0.36, 403.2, 8.2 * gpa, 57.0 * mpa, 0, 2.9, 5.6, 0.00099, 0.00194, Sources{Read, Read, Memory, Memory, Gap}},
		{"loblolly-pine", "Loblolly pine", "Pinus taeda", Softwood, 0.47, 0.51, 571.2, 12.3 * gpa, 88.0 * mpa, 3.2 * mpa, 4.8, 7.4, 0.00165, 0.00259, Sources{Read, Read, Read, Memory, Read}},
		{"longleaf-pine", "Longleaf pine", "Pinus palustris", Softwood, 0.54, 0.59, 660.8, 13.7 * gpa, 100.0 * mpa, 3.2 * mpa, 5.1, 7.5, 0.00176, 0.00263, Sources{Read, Read, Read, Memory, Read}},
		{"douglas-fir-coast", "Douglas-fir (coast)", "Pseudotsuga menziesii", Softwood, 0.45, 0.48, 537.6, 13.4 * gpa, 85.0 * mpa, 2.3 * mpa, 4.8, 7.6, 0.00165, 0.00267, Sources{Read, Read, Read, Memory, Read}},
		{"western-hemlock", "Western hemlock", "Tsuga heterophylla", Softwood, 0.42, 0.45, 504, 11.3 * gpa, 78.0 * mpa, 2.3 * mpa, 4.2, 7.8, 0.00144, 0.00274, Sources{Read, Read, Read, Derived, Read}},
		{"western-larch", "Western larch", "Larix occidentalis", Softwood, 0.48, 0.52, 582.4, 12.9 * gpa, 90.0 * mpa, 3.0 * mpa, 4.5, 9.1, 0.00155, 0.00323, Sources{Read, Read, Read, Derived, Read}},
		{"white-fir", "White fir", "Abies concolor", Softwood, 0.37, 0.39, 436.8, 10.3 * gpa, 68.0 * mpa, 2.1 * mpa, 3.3, 7.0, 0.00112, 0.00245, Sources{Read, Read, Read, Derived, Read}},
		{"western-redcedar", "Western redcedar", "Thuja plicata", Softwood, 0.31, 0.32, 358.4, 7.7 * gpa, 51.7 * mpa, 0, 2.4, 5.0, 0.00081, 0.00172, Sources{Memory, Read, Read, Derived, Gap}},
		{"redwood-old", "Redwood (old-growth)", "Sequoia sempervirens", Softwood, 0.38, 0.4, 448, 9.2 * gpa, 69.0 * mpa, 0, 2.6, 4.4, 0.00088, 0.00151, Sources{Read, Read, Memory, Derived, Gap}},
		{"sitka-spruce", "Sitka spruce", "Picea sitchensis", Softwood, 0.37, 0.4, 448, 10.8 * gpa, 70.0 * mpa, 0, 4.3, 7.5, 0.00148, 0.00263, Sources{Memory, Read, Memory, Derived, Gap}},
		{"engelmann-spruce", "Engelmann spruce", "Picea engelmannii", Softwood, 0.33, 0.35, 392, 8.9 * gpa, 64.0 * mpa, 2.4 * mpa, 3.8, 7.1, 0.0013, 0.00248, Sources{Read, Read, Read, Derived, Read}},
		{"baldcypress", "Baldcypress", "Taxodium distichum", Softwood, 0.42, 0.46, 515.2, 9.9 * gpa, 73.0 * mpa, 0, 3.8, 6.2, 0.0013, 0.00216, Sources{Memory, Read, Memory, Derived, Gap}},
		{"teak", "Teak", "Tectona grandis", Imported, 0.55, 0, 675, 10.69 * gpa, 100.7 * mpa, 0, 2.5, 5.8, 0.00101, 0.00186, Sources{Read, Read, Memory, Memory, Gap}},
		{"spanish-cedar", "Spanish-cedar", "Cedrela spp.", Imported, 0.41, 0, 491.2, 9.93 * gpa, 79.3 * mpa, 0, 4.2, 6.3, 0, 0, Sources{Read, Read, Memory, Gap, Gap}},
		{"mahogany", "Mahogany (true)", "Swietenia macrophylla", Imported, 0.45, 0, 542.8, 10.34 * gpa, 79.3 * mpa, 0, 3.0, 4.1, 0.00172, 0.00238, Sources{Memory, Memory, Memory, Memory, Gap}},
		{"khaya", "African mahogany", "Khaya spp.", Imported, 0.42, 0, 504.1, 9.65 * gpa, 73.8 * mpa, 0, 2.5, 4.5, 0, 0, Sources{Memory, Memory, Memory, Gap, Gap}},
		{"sapele", "Sapele", "Entandrophragma cylindricum", Imported, 0.55, 0, 675, 12.55 * gpa, 105.5 * mpa, 0, 4.6, 7.4, 0, 0, Sources{Memory, Memory, Memory, Gap, Gap}},
	}
}
