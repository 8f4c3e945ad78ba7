package report

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/signintech/gopdf"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
)

// How a rail is drawn, in points, chosen by us: the dots of a value stand on each
// other, at most stacked high. Where more said one thing, every pile of the rail is
// as many dots wide as that takes, so that piles are compared by their height.
const (
	dotRadius = 2.2
	dotStep   = 5.2
	stacked   = 8
)

func circle(x, y, radius float64, corners int) []gopdf.Point {
	points := make([]gopdf.Point, corners)
	for i := range points {
		angle := 2 * math.Pi * float64(i) / float64(corners)
		points[i] = gopdf.Point{X: x + radius*math.Cos(angle), Y: y + radius*math.Sin(angle)}
	}
	return points
}

// rail draws how an ask was answered, on the same rail as the answer was given:
// its values from left to right, "cannot tell" last, and the true ones underlined.
func (s *sheet) rail(a *session.AskSpread) {
	counts := countsOf(a)
	if len(counts) == 0 {
		return
	}
	step := width / float64(len(counts))
	across, tallest := piled(counts, step)
	s.room(float64(tallest)*dotStep + 3*small*leading)
	base := s.y + float64(tallest)*dotStep + 8
	s.y = base
	s.rule(margin, margin+width)
	most := 1
	for i, c := range counts {
		middle := margin + step*(float64(i)+0.5)
		s.stack(middle, base, c.N, across)
		s.y = base + 11
		lines := s.centred(middle, step, s.say.place(&a.Ask, c.Value), trueValue(a, c.Value))
		most = max(most, lines)
	}
	s.y = base + 11 + (float64(most)-0.7)*(small-1)*leading
}

// piled is how many dots wide and how high the piles of a rail are.
func piled(counts []session.Count, step float64) (across, tallest int) {
	most := 1
	for _, c := range counts {
		most = max(most, c.N)
	}
	across = min(rows(most, stacked), max(1, int(step/dotStep)-1))
	tallest = rows(most, across)
	if tallest > stacked {
		tallest = stacked + 2 // with room for the number
	}
	return across, tallest
}

// rows is how many rows of so many it takes to hold n.
func rows(n, of int) int { return (n + of - 1) / of }

// stack draws one dot a person, and the number where they are more than there is room for.
func (s *sheet) stack(middle, base float64, n, across int) {
	for i := range min(n, across*stacked) {
		row := i / across
		left := middle - float64(min(across, n-row*across)-1)/2*dotStep
		s.dot(left+float64(i%across)*dotStep, base-4-float64(row)*dotStep, dotRadius, ink)
	}
	if n > across*stacked {
		s.y = base - 4 - stacked*dotStep
		number := strconv.Itoa(n)
		s.write("bold", small, ink, middle-s.wide("bold", number)/2, number)
	}
}

// centred writes a value under its place on the rail and says over how many lines;
// the true one bold in ember and underlined, so that it does not hang on the hue.
func (s *sheet) centred(middle, step float64, text string, isTrue bool) int {
	font, colour := "regular", soft
	if isTrue {
		font, colour = "bold", ember
	}
	lines := s.broken(font, text, (step-3)*small/(small-1))
	for _, part := range lines {
		wide := s.wide(font, part) * (small - 1) / small
		s.write(font, small-1, colour, middle-wide/2, part)
		if isTrue {
			s.pdf.SetStrokeColor(ember[0], ember[1], ember[2])
			s.pdf.SetLineWidth(1)
			s.pdf.Line(middle-wide/2, s.y+2, middle+wide/2, s.y+2)
		}
		s.y += (small - 1) * leading
	}
	return len(lines)
}

// broken parts a text into lines no wider than most; a word that is wider alone is
// shortened.
func (s *sheet) broken(font, text string, most float64) (lines []string) {
	for word := range strings.SplitSeq(text, " ") {
		if last := len(lines) - 1; last >= 0 && s.wide(font, lines[last]+" "+word) <= most {
			lines[last] += " " + word
			continue
		}
		lines = append(lines, s.clip(font, word, most))
	}
	return lines
}

// wide is how wide a text is in small letters.
func (s *sheet) wide(font, text string) float64 {
	s.keep(s.pdf.SetFont(font, "", small))
	wide, err := s.pdf.MeasureTextWidth(text)
	s.keep(err)
	return wide
}

// tenths is how many parts a rail for a plane or a moment has.
const tenths = 10

// span is what such a rail goes over: an opening's height, or the time that is watched.
type span struct {
	from, to float64
	digits   int
}

func spanOf(ask *quiz.Ask) (span, bool) {
	switch {
	case ask.Kind == quiz.AskPlane:
		return span{0, 1, 1}, true
	case ask.Kind == quiz.AskMoment && ask.Watch != nil:
		return span{ask.Watch.FromS, ask.Watch.ToS, 0}, true
	}
	return span{}, false
}

// place is the place of the rail that is nearest to a value, and spell what stands there.
func (s span) place(value float64) int {
	return min(tenths, max(0, int(math.Round(tenths*(value-s.from)/(s.to-s.from)))))
}

func (s span) spell(place int) string {
	return strconv.FormatFloat(s.from+float64(place)*(s.to-s.from)/tenths, 'f', s.digits, 64)
}

// countsOf is the values of a rail: those of the ask, or what was given in tenths
// of the way, and "cannot tell".
func countsOf(a *session.AskSpread) []session.Count {
	counts := slices.DeleteFunc(slices.Clone(a.Counts), func(c session.Count) bool { return c.Value == string(engine.Undetermined) }) // nobody is offered it
	if over, is := spanOf(&a.Ask); is {
		counts = append(along(over, slices.Concat(a.Planes, a.Moments)), counts...)
	}
	if a.Unsure > 0 {
		counts = append(counts, session.Count{N: a.Unsure})
	}
	return counts
}

// along is how many of the values lie nearest to each place of a rail.
func along(over span, values []float64) []session.Count {
	counts := make([]session.Count, tenths+1)
	for i := range counts {
		counts[i].Value = over.spell(i)
	}
	for _, value := range values {
		counts[over.place(value)].N++
	}
	return counts
}

func trueValue(a *session.AskSpread, value string) bool {
	for i := range a.Truth {
		spelled := session.Value(&a.Truth[i])
		over, is := spanOf(&a.Ask)
		if at := cmp.Or(a.Truth[i].Plane, a.Truth[i].AtS); is && at != nil {
			spelled = over.spell(over.place(*at))
		}
		if spelled == value && value != "" {
			return true
		}
	}
	return false
}
