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

// closedTally counts what the lines of the closed rooms ask.
type closedTally struct {
	ran, small               int // runs, and those left to go out by themselves
	out, upperOK, lowerOK    int
	upFirst, downLater       int
	slowest, quickest        float64 // 250 kW at the latest, 100 kW at the earliest
	endings, lowestPressures []string
}

// closedRuns are the burners and places in the order of the report.
var closedRuns = []string{
	"100kW/Back", "100kW/Corner", "100kWSB/Back", "100kWSB/Corner", "250kW/Back", "250kW/Corner",
	"500kW/Back", "500kW/Corner", "500kW/Side",
}

func (c *closedTally) count(name string, run closedRun) {
	c.ran++
	c.upFirst += int(side(run.first > 1))
	c.downLater += int(side(run.least <= 1))
	c.endings = append(c.endings, run.spell(name))
	c.lowestPressures = append(c.lowestPressures, num(run.least, 1))
	if strings.HasPrefix(name, "500") {
		return // shut off by hand
	}
	c.small++
	c.out += int(side(!math.IsInf(run.outS, 1)))
	c.upperOK += int(side(run.upper >= 6 && run.upper <= 10))
	c.lowerOK += int(side(run.lower >= 8 && run.lower <= 13))
	if strings.HasPrefix(name, "100") {
		c.quickest = math.Min(c.quickest, run.outS)
	} else {
		c.slowest = math.Max(c.slowest, run.outS)
	}
}

func closedLines(s *Series, ran map[string]closedRun) {
	c := closedTally{quickest: math.Inf(1)}
	for _, name := range closedRuns {
		if run, ok := ran[name]; ok {
			c.count(name, run)
		}
	}
	of := func(n int) string { return fmt.Sprintf("%d of %d", n, c.small) }
	s.line(c.out == c.small, "100 and 250 kW fires go out by themselves", of(c.out)+": "+strings.Join(c.endings, "; "))
	s.line(c.upperOK == c.small, "oxygen at extinction, 0.6 m below the ceiling, 6 to 10 vol %", of(c.upperOK))
	s.line(c.lowerOK == c.small, "oxygen at extinction, 1.8 m below the ceiling, 8 to 13 vol %", of(c.lowerOK))
	s.line(c.slowest < c.quickest, "the larger fire goes out sooner", fmt.Sprintf("250 kW by %s s, 100 kW not before %s s", significant(c.slowest), significant(c.quickest)))
	s.line(c.upFirst == c.ran && c.downLater == c.ran, "pressure near the ceiling first up, then down to 1 Pa or below (measured least +1 to -11 Pa)",
		fmt.Sprintf("up %d, then down %d of %d: %s", c.upFirst, c.downLater, c.ran, strings.Join(c.lowestPressures, ", ")))
}
