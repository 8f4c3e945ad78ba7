package report

import (
	"io"
	"strconv"
	"strings"

	"lintel/quiz/session"
)

// PDF writes the report for paper.
func PDF(r *session.Report, to Reader, w io.Writer) error {
	s := newSheet(speak(to))
	s.top(r)
	for i := range r.Scenes {
		s.scene(&r.Scenes[i])
	}
	s.perCue(r)
	s.again(r)
	s.everyone(r)
	if s.err != nil {
		return s.err
	}
	_, err := s.pdf.WriteTo(w)
	return err
}

func (s *sheet) top(r *session.Report) {
	s.paragraph("regular", small, soft, s.say.report)
	s.paragraph("bold", large, ink, r.Title)
	s.y += 4
	ended := s.say.running
	if r.EndedMS != 0 {
		ended = s.say.clock(r.EndedMS)
	}
	present := 0
	for i := range r.People {
		if !r.People[i].Removed {
			present++
		}
	}
	places := []float64{0, 110}
	for _, line := range [][2]string{
		{s.say.opened, s.say.clock(r.OpenMS)}, {s.say.ended, ended}, {s.say.people, strconv.Itoa(present)}, {s.say.scenes, strconv.Itoa(len(r.Scenes))},
		{s.say.version, r.Engine + ", " + r.Content},
	} {
		s.cells("regular", soft, places, line[0], line[1])
	}
	if r.Rehearsal {
		s.paragraph("bold", small, ember, s.say.rehearsal)
	}
}

// scene is one scene: each ask on its rail, what was true, and what stood furthest
// apart.
func (s *sheet) scene(b *session.BoardScene) {
	s.room(headRoom + askRoom)
	s.heading(s.say.scene + " " + strconv.Itoa(b.Number) + ". " + s.say.says(b.Title))
	if b.Spread == nil {
		s.paragraph("regular", small, soft, s.say.commits+": 0")
		return
	}
	line := s.say.commits + ": " + strconv.Itoa(b.Spread.Marks)
	if b.Spread.Late > 0 {
		line += ", " + strconv.Itoa(b.Spread.Late) + " " + s.say.late
	}
	if b.Spread.Sheets > 0 {
		line += ", " + strconv.Itoa(b.Spread.Sheets) + " " + s.say.sheets
	}
	s.paragraph("regular", small, soft, line)
	for i := range b.Spread.Asks {
		s.ask(&b.Spread.Asks[i])
	}
	for _, d := range b.Doubts {
		s.paragraph("regular", small, ember, s.say.askName(b, d.Ask)+" "+d.Note)
	}
}

// askRoom is what an ask takes with its rail at its highest.
const askRoom = stacked*dotStep + 6*small*leading

func (s *sheet) ask(a *session.AskSpread) {
	s.room(askRoom)
	s.y += 6
	s.paragraph("bold", small, ink, s.say.says(a.Ask.Text))
	line := s.say.truth + ": " + s.say.truthOf(&a.Ask, a.Truth) + ". " + percent(a.Right, a.Judged) + " " + s.say.right + "."
	if mean := s.say.steps(a.MeanStep); mean != "" {
		line += " " + mean + "."
	}
	if a.Apart != nil {
		line += " " + s.say.apart + ": " + s.say.value(&a.Ask, a.Apart.Low) + " (" + strconv.Itoa(a.Apart.LowN) + ")" + s.say.against + s.say.value(&a.Ask, a.Apart.High) + " (" + strconv.Itoa(a.Apart.HighN) + ")."
	}
	s.paragraph("regular", small, soft, line)
	if a.Doubted {
		s.paragraph("regular", small, ember, s.say.doubted)
	}
	s.rail(a)
}

// askName is an ask in the words that it was asked in.
func (p *paper) askName(b *session.BoardScene, id string) string {
	for i := range b.Spread.Asks {
		if b.Spread.Asks[i].Ask.ID == id {
			return p.says(b.Spread.Asks[i].Ask.Text)
		}
	}
	return id
}

func (s *sheet) perCue(r *session.Report) {
	if len(r.Cues) == 0 {
		return
	}
	s.heading(s.say.perCue)
	for i := range r.Cues {
		c := &r.Cues[i]
		s.cells("regular", ink, []float64{0, 150, 260}, s.say.cue(c.Cue), percent(c.Right, c.Judged)+" "+s.say.right, s.wayOf(c))
	}
}

// wayOf says which way a cue was missed, where it was.
func (s *sheet) wayOf(c *session.Misread) string {
	if c.Right == c.Judged {
		return ""
	}
	return s.say.way(c.Way)
}

func (s *sheet) again(r *session.Report) {
	s.heading(s.say.repeat)
	if len(r.Repeat) == 0 {
		s.paragraph("regular", small, soft, s.say.none)
	}
	for i := range r.Repeat {
		again := &r.Repeat[i]
		s.cells("regular", ink, []float64{0, 260}, s.say.says(again.Title), s.say.cue(again.Cue)+", "+s.say.way(again.Way))
	}
}

func (s *sheet) everyone(r *session.Report) {
	s.heading(s.say.each)
	for i := range r.People {
		p := &r.People[i]
		score := ""
		if p.Score != nil {
			score = share(*p.Score)
		}
		s.cells("regular", ink, []float64{0, 115, 180, 210}, p.CallSign, s.say.commits+": "+strconv.Itoa(len(p.Committed)), score, s.notes(p))
	}
}

// notes is what an instructor would say of a person first: the cue read worst,
// and what else stands beside the score.
func (s *sheet) notes(p *session.PersonReport) string {
	var all []string
	if p.Removed {
		all = append(all, s.say.removed)
	}
	if len(p.Bias) > 0 && p.Bias[0].Right < p.Bias[0].Judged {
		all = append(all, s.say.cue(p.Bias[0].Cue)+": "+s.say.way(p.Bias[0].Way))
	}
	if p.Sure != nil {
		all = append(all, s.say.sure+" "+share(p.Sure.Said)+", "+s.say.right+" "+share(p.Sure.Right))
	}
	if p.Late > 0 {
		all = append(all, strconv.Itoa(p.Late)+" "+s.say.late)
	}
	return strings.Join(all, ", ")
}

func share(of float64) string { return strconv.FormatFloat(100*of, 'f', 0, 64) + "\u00a0%" }
