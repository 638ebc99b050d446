package panel

import "strings"

// Write returns a tree as indented text, for tests: attributes in their order, then
// custom properties in braces, then what it sends on which event.
func Write(n Node) string {
	var b strings.Builder
	write(&b, n, 0)
	return b.String()
}

func write(b *strings.Builder, n Node, depth int) {
	b.WriteString(strings.Repeat("  ", depth))
	if n.Tag == "" {
		b.WriteString(n.Text + "\n")
		return
	}
	b.WriteString(n.Tag)
	if n.Key != "" {
		b.WriteString("#" + n.Key)
	}
	for _, a := range n.Attrs {
		b.WriteString(" " + a.Name)
		if a.Value != "" {
			b.WriteString("=" + a.Value)
		}
	}
	for _, p := range n.Props {
		b.WriteString(" {" + p.Name + ": " + p.Value + "}")
	}
	for _, h := range n.On {
		b.WriteString(" @" + h.On)
	}
	b.WriteByte('\n')
	for _, k := range n.Kids {
		write(b, k, depth+1)
	}
}
