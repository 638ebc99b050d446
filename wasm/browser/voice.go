package browser

// speakEvery is the least time between two spoken messages, in ms: a reader that is
// interrupted more often says nothing.
const speakEvery = 500

// waiting is how many messages may wait to be spoken; of more, the oldest go.
const waiting = 3

// A voice spaces what is spoken in one live region.
type voice struct {
	next  float64 // the first time at which it may speak again
	queue []string
}

// say takes a message. What waits already is not said twice.
func (v *voice) say(text string) {
	if n := len(v.queue); n > 0 && v.queue[n-1] == text {
		return
	}
	v.queue = append(v.queue, text)
	if extra := len(v.queue) - waiting; extra > 0 {
		v.queue = v.queue[extra:]
	}
}

// speak returns what is to be spoken now, and in how many ms to ask again; below 0 when
// nothing waits.
func (v *voice) speak(now float64) (text string, again float64) {
	if len(v.queue) == 0 {
		return "", -1
	}
	if now < v.next {
		return "", v.next - now
	}
	text, v.queue = v.queue[0], v.queue[1:]
	v.next = now + speakEvery
	if len(v.queue) == 0 {
		return text, -1
	}
	return text, speakEvery
}
