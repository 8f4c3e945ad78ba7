package report

import (
	"github.com/signintech/gopdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// The page: A4 (ISO 216) in points, with margins and sizes chosen by us. The
// type is the Go fonts, free to embed.
const (
	margin  = 48.0
	bottom  = 800.0
	width   = 595.28 - 2*margin
	large   = 18.0
	medium  = 12.0
	small   = 9.5
	leading = 1.35
)

// Ink, ember and the thin rules, as on the screens in daylight.
var (
	ink   = [3]uint8{33, 30, 27}
	soft  = [3]uint8{105, 98, 90}
	ember = [3]uint8{176, 68, 22}
	line  = [3]uint8{205, 197, 186}
)

// sheet is a document being written from top to bottom. The first fault is kept
// and ends all that follows.
type sheet struct {
	pdf gopdf.GoPdf
	say paper
	y   float64
	err error
}

func newSheet(say paper) *sheet {
	s := &sheet{say: say}
	s.pdf.Start(gopdf.Config{PageSize: *gopdf.PageSizeA4})
	s.keep(s.pdf.AddTTFFontData("regular", goregular.TTF))
	s.keep(s.pdf.AddTTFFontData("bold", gobold.TTF))
	s.newPage()
	return s
}

func (s *sheet) keep(err error) {
	if s.err == nil {
		s.err = err
	}
}

// newPage begins a page with the caution at its foot.
func (s *sheet) newPage() {
	s.pdf.AddPage()
	s.y = bottom + 12
	s.write("regular", 8, soft, margin, s.say.caution)
	s.y = margin
}

// room begins a new page unless so much is left on this one.
func (s *sheet) room(height float64) {
	if s.y+height > bottom {
		s.newPage()
	}
}

// write puts one line at x without moving on.
func (s *sheet) write(font string, size float64, colour [3]uint8, x float64, text string) {
	s.keep(s.pdf.SetFont(font, "", size))
	s.pdf.SetTextColor(colour[0], colour[1], colour[2])
	s.pdf.SetXY(x, s.y)
	s.keep(s.pdf.Text(text))
}

// paragraph writes text over as many lines as it takes.
func (s *sheet) paragraph(font string, size float64, colour [3]uint8, text string) {
	if text == "" {
		return
	}
	s.keep(s.pdf.SetFont(font, "", size))
	lines, err := s.pdf.SplitTextWithWordWrap(text, width)
	s.keep(err)
	for _, l := range lines {
		s.room(size * leading)
		s.y += size * leading
		s.write(font, size, colour, margin, l)
	}
}

// headRoom is what a heading takes with a few lines that follow it.
const headRoom = 80

// heading writes a heading under a rule, and stays with what follows it.
func (s *sheet) heading(text string) {
	s.room(headRoom)
	s.y += 20
	s.rule(margin, margin+width)
	s.paragraph("bold", medium, ink, text)
	s.y += 3
}

func (s *sheet) rule(from, to float64) {
	s.pdf.SetStrokeColor(line[0], line[1], line[2])
	s.pdf.SetLineWidth(0.6)
	s.pdf.Line(from, s.y, to, s.y)
}

// cells writes one row of a table: texts at their places, each over as many lines
// as it takes, since what is cut off a record is lost.
func (s *sheet) cells(font string, colour [3]uint8, places []float64, texts ...string) {
	most := 1
	lines := make([][]string, len(texts))
	for i, text := range texts {
		lines[i] = s.broken(font, text, s.widthOf(places, i))
		most = max(most, len(lines[i]))
	}
	s.room(float64(most) * small * leading)
	for n := range most {
		s.y += small * leading
		for i := range texts {
			if n < len(lines[i]) {
				s.write(font, small, colour, margin+places[i], lines[i][n])
			}
		}
	}
}

func (s *sheet) widthOf(places []float64, i int) float64 {
	if i+1 < len(places) {
		return places[i+1] - places[i] - 6
	}
	return width - places[i]
}

// clip shortens a word that is wider alone than its place.
func (s *sheet) clip(font, text string, most float64) string {
	s.keep(s.pdf.SetFont(font, "", small))
	for runes := []rune(text); ; {
		wide, err := s.pdf.MeasureTextWidth(text)
		if err != nil || wide <= most || len(runes) < 2 {
			return text
		}
		runes = runes[:len(runes)-1]
		text = string(runes) + "…"
	}
}

// dot draws one dot of a rail.
func (s *sheet) dot(x, y, radius float64, colour [3]uint8) {
	s.pdf.SetFillColor(colour[0], colour[1], colour[2])
	s.pdf.SetStrokeColor(colour[0], colour[1], colour[2])
	const corners = 16
	s.pdf.Polygon(circle(x, y, radius, corners), "F")
}
