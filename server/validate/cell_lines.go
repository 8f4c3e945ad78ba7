package validate

import (
	"fmt"
	"math"
	"strings"
)

// spell is what became of a burner, in words.
func (c closedRun) spell(name string) string {
	if math.IsInf(c.outS, 1) {
		return name + " never"
	}
	return fmt.Sprintf("%s %.0f s at %.1f/%.1f %%", name, c.outS, c.upper, c.lower)
}

func closedLines(s *Series, ran map[string]closedRun) {
	out, upperOK, lowerOK, upFirst, downLater, small := 0, 0, 0, 0, 0, 0
	slow, quick := math.Inf(1), 0.0
	var found, lows []string
	for _, key := range []string{"100kW/Back", "100kW/Corner", "100kWSB/Back", "100kWSB/Corner", "250kW/Back", "250kW/Corner", "500kW/Back", "500kW/Corner", "500kW/Side"} {
		run, ok := ran[key]
		if !ok {
			continue
		}
		if run.first > 1 {
			upFirst++
		}
		if run.least <= 1 {
			downLater++
		}
		found = append(found, run.spell(key))
		lows = append(lows, num(run.least, 1))
		if key[0] == '5' {
			continue
		}
		small++
		if !math.IsInf(run.outS, 1) {
			out++
		}
		if run.upper >= 6 && run.upper <= 10 {
			upperOK++
		}
		if run.lower >= 8 && run.lower <= 13 {
			lowerOK++
		}
		if key[0] == '1' {
			slow = math.Min(slow, run.outS)
		} else {
			quick = math.Max(quick, run.outS)
		}
	}
	count := func(n, of int) string { return fmt.Sprintf("%d of %d", n, of) }
	s.line(out == small, "100 and 250 kW fires go out by themselves", count(out, small)+": "+strings.Join(found, "; "))
	s.line(upperOK == small, "oxygen at extinction, 0.6 m below the ceiling, 6 to 10 vol %", count(upperOK, small))
	s.line(lowerOK == small, "oxygen at extinction, 1.8 m below the ceiling, 8 to 13 vol %", count(lowerOK, small))
	s.line(quick < slow, "the larger fire goes out sooner", fmt.Sprintf("250 kW by %s s, 100 kW not before %s s", significant(quick), significant(slow)))
	s.line(upFirst == len(ran) && downLater == len(ran), "pressure near the ceiling first up, then down to 1 Pa or below (measured least +1 to -11 Pa)", fmt.Sprintf("up %d, then down %d of %d: %s", upFirst, downLater, len(ran), strings.Join(lows, ", ")))
}
