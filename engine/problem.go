package engine

// Problem is a mistake in something a person gave us: a file, a form, a frame.
// It says where the mistake is, what it is, and what to do about it.
type Problem struct {
	Where string // a path into the input, e.g. "openings[2].width_m"
	What  string // e.g. "is -1"
	Do    string // e.g. "give a width above 0 m"
}

// Error joins the three parts into one line.
func (p *Problem) Error() string {
	line := p.What
	if p.Where != "" {
		line = p.Where + " " + line
	}
	if p.Do != "" {
		line += ": " + p.Do
	}
	return line
}

// Bad returns a Problem as an error.
func Bad(where, what, do string) error { return &Problem{Where: where, What: what, Do: do} }
