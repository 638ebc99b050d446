package site

// cautions are what everybody must have read before a hole is drilled or a board cut:
// the hazard, what happens, what to do, in 25 words at most.
func cautions() []string {
	return []string{
		"Expect cables and pipes straight up, down and sideways of sockets and switches, near ceilings and corners (UK practice). Detect, isolate, drill shallow.",
		"Old walls can hold asbestos or lead paint. Do not drill, sand or scrape before a sample is tested.",
		"Children climb. No load figure counts a person; keep toys off high shelves and fix to the structure.",
		"Wood dust and cutters injure. Extract dust, wear a mask, eye and ear protection; guard and unplug the machine first.",
	}
}
