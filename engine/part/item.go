package part

import (
	"cmp"
	"strconv"

	"ledgewright/engine/board"
	"ledgewright/engine/hardware"
	"ledgewright/engine/module"
	"ledgewright/engine/rank"
	"ledgewright/engine/shop"
	"ledgewright/engine/unit"
	"ledgewright/engine/words"
)

// Kinds of items that are no ids in package hardware: keys of words.
const (
	rodSet   = "item.rod"       // cut to length; the wall's lining comes on top
	rodPlate = "item.plate-rod" // on its plate
	screw    = "item.screw"
)

// A class orders the list of hardware.
type class uint8

const (
	ofBracket class = iota
	ofRod
	ofLock
	ofScrew
	ofPiece
	ofStrip
	ofChannel
	ofSource
)

// An item is an Item with its place in the list.
type item struct {
	Item
	class class
	thick unit.Length // orders screws and pieces within their class
}

// gather adds up the items of all modules: by class, then as they first stand, then by
// length, the longest first.
func gather(all []Counted) []Item {
	type key struct {
		kind, size string
		length     unit.Length
	}
	at := map[key]int{}
	var sum []item
	for i := range all {
		for _, it := range all[i].items {
			k := key{it.Kind, it.Size, it.Length}
			n, ok := at[k]
			if !ok {
				n = len(sum)
				at[k] = n
				sum = append(sum, it)
				sum[n].Quantity = 0
			}
			sum[n].Quantity += it.Quantity
		}
	}
	rank.By(sum, func(a, b item) int {
		return cmp.Or(cmp.Compare(a.class, b.class), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.thick, b.thick), cmp.Compare(b.Length, a.Length))
	})
	out := make([]Item, len(sum))
	for i := range sum {
		out[i] = sum[i].Item
	}
	return out
}

// items lists the hardware of one module.
func items(m *module.Result, s *shop.Profile) (out []item) {
	for i := range m.Fixings {
		out = append(out, ofFixing(&m.Fixings[i])...)
	}
	for i := range m.Corners {
		for _, p := range m.Corners[i].Pieces {
			out = append(out, item{Item{Kind: "piece." + p.What, Size: pieceSize(p), Quantity: p.Count, Length: p.Length}, ofPiece, p.Thickness})
		}
	}
	for i := range m.Strips {
		out = append(out, ofLight(m, &m.Strips[i], s)...)
	}
	return out
}

// ofFixing lists the bracket itself, its rods, locks and screws.
func ofFixing(f *board.Fixing) []item {
	out := []item{{Item{Kind: f.Kind, Quantity: 1}, ofBracket, 0}}
	for _, r := range f.Rods {
		it := item{Item{Kind: rodPlate, Size: size(r.Diameter), Quantity: 1, Length: r.InBoard}, ofRod, r.Diameter}
		if r.InWall > 0 {
			it.Kind, it.Length = rodSet, r.InBoard+r.InWall
		}
		out = append(out, it)
	}
	if locks(f.Lock) {
		out = append(out, item{Item{Kind: "lock." + f.Lock, Quantity: max(len(f.Rods), 1)}, ofLock, 0})
	}
	for _, s := range f.Screws {
		if !s.Rod {
			out = append(out, item{Item{Kind: screw, Size: screwSize(s), Quantity: 1, Length: s.Length}, ofScrew, s.Diameter})
		}
	}
	return out
}

// locks reports whether a lock is a thing to buy. An undercut and a screw through the
// module's own wood are not.
func locks(lock string) bool {
	switch lock {
	case "grub-screw", "pin", "resin":
		return true
	}
	return false
}

// screwSize is the id of a screw of the table, or its diameter.
func screwSize(s board.Screw) string {
	for _, h := range hardware.Screws() {
		if h.Diameter == s.Diameter && h.Length == s.Length && h.Root == s.Root {
			return h.ID
		}
	}
	return size(s.Diameter)
}

// size is a length as a size of goods: inches where it is a whole number of sixteenths
// and not of half millimetres, else millimetres to a tenth.
func size(l unit.Length) string {
	if l%(unit.Inch/16) == 0 && l%(unit.Millimetre/2) != 0 {
		return unit.Style{System: unit.Inches, Step: unit.Inch / 64}.WithUnit(l)
	}
	return unit.Style{System: unit.Metric, Step: unit.Millimetre / 10}.WithUnit(l)
}

func pieceSize(p board.Piece) string {
	if p.Width == 0 {
		return size(p.Thickness)
	}
	return size(p.Thickness) + " x " + size(p.Width)
}

// ofLight lists a strip, the channels that its groove is cut for, and its source.
func ofLight(m *module.Result, l *board.Strip, s *shop.Profile) []item {
	var out []item
	if l.Units > 0 {
		out = append(out, item{Item{Kind: l.Kind, Size: strconv.Itoa(l.Units), Quantity: 1, Length: l.Length}, ofStrip, 0})
	}
	for _, r := range l.Runs {
		if c, ok := channelFor(m, l.Light, r.Board, s); ok {
			out = append(out, item{Item{Kind: c, Quantity: 1, Length: max(r.To.U-r.From.U, r.From.U-r.To.U)}, ofChannel, 0})
		}
	}
	if l.Source != "" {
		out = append(out, item{Item{Kind: l.Source, Quantity: 1}, ofSource, 0})
	}
	return out
}

// channelFor returns the channel that a light's groove in a board is cut for: as wide as
// its body and the shop's play, and as deep.
func channelFor(m *module.Result, light, boardID string, s *shop.Profile) (string, bool) {
	f := cut(m, boardID, board.Groove, board.Cause{What: "light", ID: light})
	if f == nil {
		return "", false
	}
	return channel(f.Across, f.Depth, s.Grooves.ChannelPlay)
}

func channel(width, depth, play unit.Length) (string, bool) {
	for _, c := range hardware.Channels() {
		if c.Deep == depth && width >= c.Groove && width-c.Groove <= play {
			return c.ID, true
		}
	}
	return "", false
}

// Name returns what an item is, in words.
func (i Item) Name() string {
	style := unit.Style{}
	if words.Has(i.Kind) {
		return words.Text(i.Kind, nil, style)
	}
	if b, ok := hardware.Bracket(i.Kind); ok {
		return words.Text("bracket."+string(b.Family), nil, style) + ", " + i.Kind
	}
	if s, ok := hardware.FindStrip(i.Kind); ok {
		return words.Text("item.strip", []words.Arg{words.Number("volts", s.Volts), words.Number("watts", s.Watts)}, style)
	}
	if s, ok := hardware.FindSource(i.Kind); ok {
		key := "item.driver"
		if s.WattHours > 0 {
			key = "item.battery"
		}
		return words.Text(key, []words.Arg{words.Number("volts", s.Volts), words.Number("watts", s.Watts)}, style)
	}
	for _, c := range hardware.Channels() {
		if c.ID == i.Kind {
			return words.Text("item.channel", []words.Arg{words.Length("width", c.Groove), words.Length("depth", c.Deep)}, style)
		}
	}
	return i.Kind
}
