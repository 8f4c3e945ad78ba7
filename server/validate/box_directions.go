package validate

import (
	"fmt"
	"math"
	"sort"
	"strings"
)

// boxDirections judges every change: what each opening did within a test, and
// what differs between tests.
func boxDirections(s *Series, ran map[string]boxTrace) {
	good, all := 0, 0
	var wrong []string
	judge := func(what string, measured, ours, least float64) {
		if math.Abs(measured) < least {
			return
		}
		all++
		if measured*ours > 0 {
			good++
			return
		}
		wrong = append(wrong, fmt.Sprintf("%s measured %+.3g ours %+.3g", what, measured, ours))
	}
	pair := func(name string, a, b boxMoment) {
		judge(name+" rise", b.riseMeasured-a.riseMeasured, b.riseOurs-a.riseOurs, 2.5)
		judge(name+" height", b.heightMeasured-a.heightMeasured, b.heightOurs-a.heightOurs, 0.012)
		if a.aboveMeasured != b.aboveMeasured {
			judge(name+" layer above", side(b.aboveMeasured)-side(a.aboveMeasured), side(b.aboveOurs)-side(a.aboveOurs), 0.5)
		}
	}
	for _, c := range boxOpenings {
		pair(c.name, ran[c.test].at(c.before), ran[c.test].at(c.after))
	}
	for _, c := range boxTwins {
		pair(c.name, ran[c.test].at(c.at), ran[c.than].at(c.at))
	}
	sort.Strings(wrong)
	found := fmt.Sprintf("%d of %d", good, all)
	if len(wrong) > 0 {
		found += "; wrong: " + strings.Join(wrong, "; ")
	}
	s.Directions = float64(good) / float64(max(1, all))
	s.line(good == all, "the direction of every change of more than 2.5 K or 12 mm", found)
}

func side(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// boxOpenings are the moments before and after each opening was opened.
var boxOpenings = []struct {
	name, test    string
	before, after float64
}{
	{"3: hole, no way out", "3", 1170, 1500},
	{"3: windows opened", "3", 2370, 3570},
	{"5: large hole, windows open", "5", 1170, 1500},
	{"9: small hole, no way out", "9", 1170, 1500},
	{"9: large hole, no way out", "9", 1500, 2370},
	{"9: first window", "9", 2370, 4770},
	{"9: second window", "9", 4770, 5970},
	{"11: round hole, windows open", "11", 1170, 1500},
	{"15: small hole, no way out", "15", 1170, 1500},
	{"15: large hole, no way out", "15", 1500, 2370},
	{"15: roof vent", "15", 3570, 4770},
}

// boxTwins compare two tests at one time.
var boxTwins = []struct {
	name, test, than string
	at               float64
}{
	{"larger holes (1 to 7)", "1", "7", 5970},
	{"larger hole (1 to 5)", "1", "5", 5970},
	{"larger holes early (1 to 7)", "1", "7", 1170},
	{"upper windows shut (1 to 3)", "1", "3", 2370},
	{"hole not yet opened (7 to 9)", "7", "9", 1170},
	{"only a roof vent (7 to 15)", "7", "15", 5970},
	{"square to round hole opened later (1 to 11)", "1", "11", 1170},
}
