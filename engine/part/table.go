package part

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"ledgewright/engine/unit"
	"ledgewright/engine/wood"
	"ledgewright/engine/words"
)

// CSV returns the wooden parts as RFC 4180 has it: UTF-8, one header, a line a part, each
// ended by CR LF, cells quoted where they must be. The cells stand apart by a comma; or,
// with comma set, where the comma is the decimal sign, by a semicolon. Lengths are
// plain numbers in the unit that the header names. A text that a spreadsheet would take
// for a formula is led by an apostrophe.
func CSV(list List, system unit.System, comma bool) []byte {
	w := sheet{separator: ",", point: "."}
	if comma {
		w = sheet{separator: ";", point: ","}
	}
	style := unit.Style{System: system, Step: unit.Inch / 64}
	if system != unit.Inches {
		style.Step = unit.Millimetre / 100
	}
	w.header(system)
	for i := range list.Parts {
		w.part(&list.Parts[i], style)
	}
	return []byte(w.b.String())
}

// A sheet is a CSV text being written.
type sheet struct {
	b                strings.Builder
	separator, point string
	cells            int // in this line
}

func (w *sheet) header(system unit.System) {
	u := " (" + string(unit.Metric) + ")"
	if system == unit.Inches {
		u = " (" + string(unit.Inches) + ")"
	}
	for _, key := range []string{"number", "part", "quantity", "thickness", "width", "length", "inside", "wood", "grain", "start", "end", "edges", "notes", "mirror", "differs", "boards"} {
		s := words.Text("column."+key, nil, unit.Style{})
		switch key {
		case "thickness", "width", "length", "inside":
			s += u
		}
		w.text(s)
	}
	w.end()
}

func (w *sheet) part(p *Part, style unit.Style) {
	w.number(strconv.Itoa(p.Number))
	w.text(p.Name)
	w.number(strconv.Itoa(p.Quantity))
	for _, l := range []unit.Length{p.Thickness, p.Width, p.Overall, p.Inside} {
		w.number(decimal(l, style.System))
	}
	w.text(woodName(p.Wood))
	w.text(words.Text("grain.length", nil, style))
	w.text(words.Text(p.Start, nil, style))
	w.text(words.Text(p.End, nil, style))
	w.text(strings.Join(p.Edges, ", "))
	w.text(p.notes(style))
	if p.MirrorOf > 0 {
		w.number(strconv.Itoa(p.MirrorOf))
	} else {
		w.text("")
	}
	w.text(said(p.Differs, style))
	w.text(strings.Join(p.Boards, " "))
	w.end()
}

// decimal is a length as a plain number: in millimetres, exact, or in inches to a
// hundred-thousandth, which tells 1/64 in from every other.
func decimal(l unit.Length, system unit.System) string {
	if system != unit.Inches {
		return l.Decimal()
	}
	s := strconv.FormatFloat(float64(l)/float64(unit.Inch), 'f', 6, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

func (w *sheet) next() {
	if w.cells > 0 {
		w.b.WriteString(w.separator)
	}
	w.cells++
}

func (w *sheet) end() {
	w.b.WriteString("\r\n")
	w.cells = 0
}

// number writes a plain number.
func (w *sheet) number(s string) {
	w.next()
	w.b.WriteString(strings.Replace(s, ".", w.point, 1))
}

// text writes a text that somebody may have typed.
func (w *sheet) text(s string) {
	w.next()
	if s != "" && strings.ContainsAny(s[:1], "=+-@\t\r\n") {
		s = "'" + s
	}
	if strings.ContainsAny(s, w.separator+"\"\r\n") {
		s = `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	w.b.WriteString(s)
}

// notes are the words of all notes.
func (p *Part) notes(style unit.Style) string {
	all := make([]string, len(p.Notes))
	for i, n := range p.Notes {
		all[i] = n.Say(style)
	}
	return strings.Join(all, "; ")
}

func said(keys []string, style unit.Style) string {
	all := make([]string, len(keys))
	for i, k := range keys {
		all[i] = words.Text(k, nil, style)
	}
	return strings.Join(all, ", ")
}

func woodName(id string) string {
	if s, ok := wood.Find(id); ok {
		return s.Name
	}
	return id
}

// Text returns the list as tables to read: wooden parts, hardware, and the sums, with
// lengths rounded as the style has it.
func Text(list List, style unit.Style) string {
	var b strings.Builder
	rows := [][]string{head("number", "part", "quantity", "size", "wood", "ends", "notes")}
	for i := range list.Parts {
		rows = append(rows, list.Parts[i].row(style))
	}
	table(&b, rows)
	if len(list.Hardware) > 0 {
		rows = [][]string{head("hardware", "size-of", "quantity", "length")}
		for _, h := range list.Hardware {
			length := ""
			if h.Length > 0 {
				length = style.Length(h.Length)
			}
			rows = append(rows, []string{h.Name(), h.Size, strconv.Itoa(h.Quantity), length})
		}
		b.WriteString("\n")
		table(&b, rows)
	}
	b.WriteString("\n" + words.Text("part.sum", []words.Arg{
		words.Count("n", list.Boards), words.Mass("mass", list.Mass),
		{Name: "glue", Value: words.Value{Is: words.IsArea, Number: float64(list.Glue)}},
	}, style) + "\n")
	return b.String()
}

func (p *Part) row(style unit.Style) []string {
	size := style.Length(p.Thickness) + " x " + style.Length(p.Width) + " x " + style.Length(p.Overall)
	note := p.notes(style)
	if p.MirrorOf > 0 {
		note = words.Text("note.mirror", []words.Arg{words.Count("n", p.MirrorOf), words.Name("where", said(p.Differs, style))}, style) + "; " + note
	}
	return []string{strconv.Itoa(p.Number), p.Name, strconv.Itoa(p.Quantity), size, woodName(p.Wood),
		words.Text(p.Start, nil, style) + ", " + words.Text(p.End, nil, style), strings.TrimSuffix(note, "; ")}
}

func head(keys ...string) []string {
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = words.Text("column."+k, nil, unit.Style{})
	}
	return out
}

// table writes rows in columns two spaces apart, the first row underlined.
func table(b *strings.Builder, rows [][]string) {
	width := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, c := range row {
			width[i] = max(width[i], utf8.RuneCountInString(c))
		}
	}
	for n, row := range rows {
		line := ""
		for i, c := range row {
			line += c + strings.Repeat(" ", width[i]-utf8.RuneCountInString(c)+2)
		}
		line = strings.TrimRight(line, " ")
		b.WriteString(line + "\n")
		if n == 0 {
			b.WriteString(strings.Repeat("-", utf8.RuneCountInString(line)) + "\n")
		}
	}
}
