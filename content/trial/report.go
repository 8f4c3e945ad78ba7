package trial

import (
	"fmt"
	"strings"
)

// String is the report as printed: a line for each denominator and reader.
func (r Report) String() string {
	var text strings.Builder
	for _, g := range r.Groups() {
		for _, line := range []struct {
			who   string
			score Score
		}{{"reader", g.Ours}, {"always flag", g.Always}, {"density 3 or more", g.Density}} {
			fmt.Fprintf(&text, "%-12s %-18s hostile flagged %s   benign flagged %s   gain %+.2f\n",
				g.Name, line.who, line.score.Hostile, line.score.Benign, line.score.Gain())
		}
	}
	return text.String()
}

// String is "3 of 17 (18 %, 4 to 43), 2 cannot tell".
func (c Count) String() string {
	low, high := Interval(c.Flagged, c.All)
	line := fmt.Sprintf("%d of %d (%.0f %%, %.0f to %.0f)", c.Flagged, c.All, 100*c.share(), 100*low, 100*high)
	if c.Abstained > 0 {
		line += fmt.Sprintf(", %d cannot tell", c.Abstained)
	}
	return line
}
