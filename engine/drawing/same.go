package drawing

import "slices"

// Same reports whether two items are drawn alike, to the last bit.
func Same(a, b *Item) bool {
	return a.Kind == b.Kind && a.ID == b.ID && a.Group == b.Group && a.Layer == b.Layer &&
		a.Tone == b.Tone && a.Fade == b.Fade && a.Soft == b.Soft && sameLine(&a.Line, &b.Line) &&
		a.Wood == b.Wood && a.Text == b.Text && a.Glow == b.Glow && slices.Equal(a.Path, b.Path)
}

func sameLine(a, b *Line) bool {
	return a.Tone == b.Tone && a.Width == b.Width && a.MM == b.MM && a.Round == b.Round && slices.Equal(a.Dash, b.Dash)
}
