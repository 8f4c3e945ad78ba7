package validate

import (
	"fmt"
	"sort"
	"strings"
)

// quantities lists all in the order of the tables.
var quantities = []*Quantity{
	&LayerRise, &ClosedRise, &LowerRise, &AboveRise, &LayerDepth, &Neutral, &Flow, &Speed, &Pressure, &Oxygen, &OxygenSpent, &Extinction,
}

// Markdown is the report as it is committed. Numbers are rounded so that only a
// change of the physics shows.
func (r Report) Markdown() string {
	var b strings.Builder
	b.WriteString(preface)
	r.writeLines(&b)
	r.writeScatter(&b)
	for i := range r.Series {
		r.Series[i].write(&b)
	}
	return b.String()
}

const preface = `# The fire model against published measurements

Made by ` + "`validate`" + `; do not edit. A test runs it again and fails when this file differs,
so a change of the physics shows here as a diff (` + "`go test ./server/validate -update`" + `).

Each series holds about half of the published rows; the other half is kept back.
δ is the bias (1 is none) and σ the relative standard deviation of the model with that of
the experiments removed, from the logarithms of model over measured:
u² = Σ(ln(M/E) - mean)²/(n-1), σ² = u² - σ_E², δ = exp(mean + σ²/2 - σ_E²/2)
(McGrattan and Toman 2011, as coded in the scatter plots of the FDS and CFAST validation guides).
Rows that stand apart are shown with the reason and do not count; a pair of opposite signs or
without an end ("never") has no logarithm and shows in the lines of acceptance only.

`

// writeLines is the tables of acceptance and of further checks.
func (r Report) writeLines(b *strings.Builder) {
	for _, further := range []bool{false, true} {
		var lines []Line
		holds := 0
		for _, s := range r.Series {
			for _, l := range s.Lines {
				if l.Further == further {
					lines = append(lines, l)
					holds += int(side(l.Holds))
				}
			}
		}
		title := "Acceptance"
		if further {
			title = "Further checks"
		}
		fmt.Fprintf(b, "## %s: %d of %d lines hold\n\n| series | asked | found | |\n|---|---|---|---|\n", title, holds, len(lines))
		for _, l := range lines {
			fmt.Fprintf(b, "| %s | %s | %s | %s |\n", l.Series, l.Asks, l.Found, verdict(l.Holds))
		}
		b.WriteString("\n")
	}
}

func verdict(holds bool) string {
	if holds {
		return "holds"
	}
	return "**fails**"
}

// writeScatter is bias and scatter by quantity, series used for tuning apart.
func (r Report) writeScatter(b *strings.Builder) {
	for _, tuned := range []bool{false, true} {
		title := "Bias and scatter, series not used for tuning"
		if tuned {
			title = "Bias and scatter, series used for tuning"
		}
		fmt.Fprintf(b, "## %s\n\n| quantity | rows | δ | σ | hand: rows | δ | σ | ours on those: δ | σ | mature zone models |\n|---|---|---|---|---|---|---|---|---|---|\n", title)
		for _, q := range quantities {
			points := r.gather(q, tuned)
			if len(points) == 0 {
				continue
			}
			writeScatterRow(b, q, points)
		}
		b.WriteString("\n")
	}
}

func writeScatterRow(b *strings.Builder, q *Quantity, points []Point) {
	ours := scatterIn(points, false)
	fmt.Fprintf(b, "| %s, %s | %d | %s | %s |", q.Name, q.Unit, ours.Points, num(ours.Bias, 2), percent(ours.Model))
	hand, same := scatterIn(points, true), scatterIn(withHand(points), false)
	if hand.Points < 2 {
		b.WriteString(" - | - | - | - | - |")
	} else {
		fmt.Fprintf(b, " %d | %s | %s | %s | %s |", hand.Points, num(hand.Bias, 2), percent(hand.Model), num(same.Bias, 2), percent(same.Model))
	}
	mature := q.Mature
	if mature == "" {
		mature = "-"
	}
	fmt.Fprintf(b, " %s |\n", mature)
}

// write is one series: what was assumed, its scatter and its rows.
func (s *Series) write(b *strings.Builder) {
	fmt.Fprintf(b, "## %s: %s\n\n", s.ID, s.Title)
	if s.Tuned == "" {
		b.WriteString("Used for tuning: nothing.\n")
	} else {
		fmt.Fprintf(b, "Used for tuning: %s.\n", s.Tuned)
	}
	for _, note := range s.Notes {
		fmt.Fprintf(b, "- %s\n", note)
	}
	b.WriteString("\n")
	if len(s.Points) == 0 {
		return
	}
	b.WriteString("| quantity | rows | δ | σ |\n|---|---|---|---|\n")
	for _, q := range quantities {
		if points := s.points(q); len(points) > 0 {
			ours := scatterIn(points, false)
			fmt.Fprintf(b, "| %s, %s | %d | %s | %s |\n", q.Name, q.Unit, ours.Points, num(ours.Bias, 2), percent(ours.Model))
		}
	}
	s.writeRows(b)
}

// writeRows lists measured against ours, row by row, a quantity a paragraph.
func (s *Series) writeRows(b *strings.Builder) {
	for _, q := range quantities {
		var words []string
		apart := map[string][]string{}
		for _, p := range s.Points {
			if p.Quantity != q {
				continue
			}
			word := fmt.Sprintf("%s %s/%s", p.Row, significant(p.Measured), significant(p.Ours))
			if p.Apart != "" {
				apart[p.Apart] = append(apart[p.Apart], word)
				continue
			}
			words = append(words, word)
		}
		if len(words)+len(apart) == 0 {
			continue
		}
		fmt.Fprintf(b, "\n%s (row measured/ours):\n%s\n", q.Name, wrapped(words))
		for _, why := range sorted(apart) {
			fmt.Fprintf(b, "\napart, %s:\n%s\n", why, wrapped(apart[why]))
		}
	}
	b.WriteString("\n")
}

// wrapped joins words into lines of about a hundred letters, so that a diff
// shows which of them changed.
func wrapped(words []string) string {
	var b strings.Builder
	width := 0
	for i, word := range words {
		if i < len(words)-1 {
			word += ";"
		}
		switch {
		case width == 0:
		case width+len(word) > 100:
			b.WriteString("\n")
			width = 0
		default:
			b.WriteString(" ")
			width++
		}
		b.WriteString(word)
		width += len(word)
	}
	return b.String()
}

func sorted(m map[string][]string) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	return keys
}
