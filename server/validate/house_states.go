package validate

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"lintel/engine"
)

// spell is a tap over the time between two moves: the mean of its minutes,
// measured and ours.
type spell struct{ measured, ours float64 }

// spells are the means of every tap between two moves, over the minutes that lie
// wholly between them.
func (g gauged) spells(sc engine.Scenario) []spell {
	bounds := []float64{0}
	for _, m := range sc.Moves {
		bounds = append(bounds, m.TS)
	}
	bounds = append(bounds, math.Inf(1))
	minutes := make([]float64, 0, len(g.measured))
	for at := range g.measured {
		minutes = append(minutes, at)
	}
	sort.Float64s(minutes)
	var list []spell
	for i := range len(bounds) - 1 {
		for tap := range g.taps {
			if s, ok := g.mean(tap, minutes, bounds[i]+30, bounds[i+1]-30); ok {
				list = append(list, s)
			}
		}
	}
	return list
}

// mean is a tap over the minutes whose middles lie between two times; it is not
// ok where that mean is too near zero to have a sign.
func (g gauged) mean(tap int, minutes []float64, from, to float64) (s spell, ok bool) {
	count := 0.0
	for _, at := range minutes {
		if at >= from && at <= to {
			s.measured += g.measured[at][tap]
			s.ours += g.ours[at][tap]
			count++
		}
	}
	s.measured, s.ours = s.measured/count, s.ours/count
	return s, math.Abs(s.measured) >= leastSign
}

// spellLine is the further check on means between two moves, beside the strict
// line on every minute.
func spellLine(s *Series, list []spell) {
	good, fair := 0, 0
	for _, x := range list {
		off := math.Abs(x.ours - x.measured)
		if off <= 0.5*math.Abs(x.measured) {
			good++
		}
		if off <= 0.5*math.Abs(x.measured) || off <= unzeroedPa {
			fair++
		}
	}
	n := len(list)
	s.further(good == n, "magnitude within 50 %, every tap's mean between two moves (milder than the line of acceptance on every minute)",
		share(part(good, n), n)+"; within 50 % or 1 Pa "+share(part(fair, n), n))
}

func part(good, all int) float64 { return float64(good) / float64(max(1, all)) }

// offByTap says how many minutes of each tap are off by more than half.
func offByTap(s *Series, taps []tap) string {
	var parts []string
	for _, t := range taps {
		off, all := 0, 0
		for _, p := range s.points(&Pressure) {
			if !strings.HasSuffix(p.Row, " "+t.column) {
				continue
			}
			all++
			if math.Abs(p.Ours-p.Measured) > 0.5*math.Abs(p.Measured) {
				off++
			}
		}
		parts = append(parts, fmt.Sprintf("%s %d of %d", t.column, off, all))
	}
	return "minutes off by more than half, by tap: " + strings.Join(parts, ", ")
}
