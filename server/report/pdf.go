package report

import (
	"io"
	"strconv"
	"strings"

	"lintel/quiz/session"
)

// PDF writes the report for paper.
func PDF(r *session.Report, says Says, w io.Writer) error {
	s := newSheet()
	s.top(r)
	for i := range r.Scenes {
		s.scene(&r.Scenes[i], says)
	}
	s.cues(r)
	s.repeat(r, says)
	s.people(r)
	if s.err != nil {
		return s.err
	}
	_, err := s.pdf.WriteTo(w)
	return err
}

func (s *sheet) top(r *session.Report) {
	s.paragraph("regular", small, soft, wordReport)
	s.paragraph("bold", large, ink, r.Title)
	s.y += 4
	ended := wordRunning
	if r.EndedMS != 0 {
		ended = clock(r.EndedMS)
	}
	present := 0
	for i := range r.People {
		if !r.People[i].Removed {
			present++
		}
	}
	places := []float64{0, 110}
	for _, line := range [][2]string{
		{wordOpened, clock(r.OpenMS)}, {wordEnded, ended}, {wordPeople, strconv.Itoa(present)}, {wordScenes, strconv.Itoa(len(r.Scenes))},
		{wordVersion, r.Engine + ", " + r.Content},
	} {
		s.cells("regular", soft, places, line[0], line[1])
	}
	if r.Rehearsal {
		s.paragraph("bold", small, ember, wordRehearse)
	}
}

// scene is one scene: each ask on its rail, what was true, and what stood furthest
// apart.
func (s *sheet) scene(b *session.BoardScene, says Says) {
	s.heading(wordScene + " " + strconv.Itoa(b.Number) + ". " + says(b.Title))
	if b.Spread == nil {
		s.paragraph("regular", small, soft, "0 "+wordCommits)
		return
	}
	line := strconv.Itoa(b.Spread.Marks) + " " + wordCommits
	if b.Spread.Late > 0 {
		line += ", " + strconv.Itoa(b.Spread.Late) + " " + wordLate
	}
	if b.Spread.Sheets > 0 {
		line += ", " + strconv.Itoa(b.Spread.Sheets) + " " + wordSheets
	}
	s.paragraph("regular", small, soft, line)
	for i := range b.Spread.Asks {
		s.ask(&b.Spread.Asks[i], says)
	}
	for _, d := range b.Doubts {
		s.paragraph("regular", small, ember, d.Ask+": "+d.Note)
	}
}

func (s *sheet) ask(a *session.AskSpread, says Says) {
	s.room(stacked*dotStep + 6*small*leading)
	s.y += 6
	s.paragraph("bold", small, ink, says(a.Ask.Text))
	line := wordTruth + ": " + truthOf(a.Truth) + ". " + percent(a.Right, a.Judged) + " " + wordRight + "."
	if mean := steps(a.MeanStep); mean != "" {
		line += " " + mean + " " + wordErr + "."
	}
	if a.Apart != nil {
		line += " " + wordApart + ": " + plainWord(a.Apart.Low) + " (" + strconv.Itoa(a.Apart.LowN) + ")" + wordAgainst + plainWord(a.Apart.High) + " (" + strconv.Itoa(a.Apart.HighN) + ")."
	}
	s.paragraph("regular", small, soft, line)
	if a.Doubted {
		s.paragraph("regular", small, ember, wordDoubted)
	}
	s.rail(a)
}

func (s *sheet) cues(r *session.Report) {
	if len(r.Cues) == 0 {
		return
	}
	s.heading(wordPerCue)
	for i := range r.Cues {
		c := &r.Cues[i]
		s.cells("regular", ink, []float64{0, 150, 260}, plainWord(c.Cue), percent(c.Right, c.Judged)+" "+wordAgrees, wayOf(c))
	}
}

// wayOf says which way a cue was missed, where it was.
func wayOf(c *session.Misread) string {
	if c.Right == c.Judged {
		return ""
	}
	return wayWord(c.Way)
}

func (s *sheet) repeat(r *session.Report, says Says) {
	s.heading(wordRepeat)
	if len(r.Repeat) == 0 {
		s.paragraph("regular", small, soft, wordNone)
	}
	for i := range r.Repeat {
		again := &r.Repeat[i]
		s.cells("regular", ink, []float64{0, 260}, says(again.Title), plainWord(again.Cue)+", "+wayWord(again.Way))
	}
}

func (s *sheet) people(r *session.Report) {
	s.heading(wordEach)
	for i := range r.People {
		p := &r.People[i]
		score := ""
		if p.Score != nil {
			score = share(*p.Score)
		}
		s.cells("regular", ink, []float64{0, 170, 260, 320}, p.CallSign, strconv.Itoa(len(p.Committed))+" "+wordCommits, score, notes(p))
	}
}

// notes is what an instructor would say of a person first: the cue read worst,
// and what else stands beside the score.
func notes(p *session.PersonReport) string {
	var all []string
	if p.Removed {
		all = append(all, wordRemoved)
	}
	if len(p.Bias) > 0 && p.Bias[0].Right < p.Bias[0].Judged {
		all = append(all, plainWord(p.Bias[0].Cue)+" "+wayWord(p.Bias[0].Way))
	}
	if p.Sure != nil {
		all = append(all, wordSure+" "+share(p.Sure.Said)+", "+wordRight+" "+share(p.Sure.Right))
	}
	if p.Late > 0 {
		all = append(all, strconv.Itoa(p.Late)+" "+wordLate)
	}
	return strings.Join(all, ", ")
}

func share(of float64) string { return strconv.FormatFloat(100*of, 'f', 0, 64) + " %" }
