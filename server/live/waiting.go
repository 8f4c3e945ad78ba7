package live

import "slices"

// waiting is the sockets that have not said who they are. Anybody can open those,
// so they have places of their own, and take none from who has. When all are
// taken, the oldest of the class that waits most is cut: whoever says hello at
// once is through before its turn comes, and a flood upon one class reaches no
// other. Whoever holds it locks it.
type waiting struct {
	most  int
	count int
	lines map[string][]*socket // by class, oldest first
}

func newWaiting(most int) waiting { return waiting{most: most, lines: map[string][]*socket{}} }

// add has a socket wait, and returns the one that is to be cut for it, or nil.
func (w *waiting) add(class string, s *socket) (cut *socket) {
	if w.count >= w.most {
		longest := ""
		for of, line := range w.lines {
			if len(line) > len(w.lines[longest]) {
				longest = of
			}
		}
		if line := w.lines[longest]; len(line) > 0 {
			cut = line[0]
			w.remove(longest, cut)
		}
	}
	w.count++
	w.lines[class] = append(w.lines[class], s)
	return cut
}

// remove takes a socket from its line, if it still stands there.
func (w *waiting) remove(class string, s *socket) {
	at := slices.Index(w.lines[class], s)
	if at < 0 {
		return
	}
	w.count--
	if w.lines[class] = slices.Delete(w.lines[class], at, at+1); len(w.lines[class]) == 0 {
		delete(w.lines, class)
	}
}
