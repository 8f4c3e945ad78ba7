// Package report puts a class's report on paper: as a table for a spreadsheet and
// as a PDF. What it says follows from session.Report alone.
package report

import (
	"math"
	"strconv"
	"strings"
	"time"

	"lintel/engine"
	"lintel/quiz"
	"lintel/quiz/session"
)

// Says puts a key of the content's sentences into words.
type Says func(key string) string

// Reader is for whom a report is written: in which language, with the content's
// sentences in the same, by which clock, and with a point or a comma before
// decimals; without a clock it is UTC's, without a point it is the language's.
type Reader struct {
	Language string
	Says     Says
	Zone     *time.Location
	Point    string
}

// paper is what a report is said with.
type paper struct {
	*words
	says  Says
	zone  *time.Location
	point string
}

// speak returns the paper for a reader; a language that there is not is English.
func speak(to Reader) paper {
	own, known := ofLanguage[to.Language]
	if !known {
		own = ofLanguage["en"]
	}
	zone := to.Zone
	if zone == nil {
		zone = time.UTC
	}
	point := to.Point
	if point == "" {
		point = own.point
	}
	return paper{own, to.Says, zone, point}
}

// truthOf spells every right reply to an ask.
func (p *paper) truthOf(ask *quiz.Ask, truth []quiz.Reply) string {
	var values []string
	for i := range truth {
		if ask.Kind == quiz.AskMoment {
			return p.showed(ask, &truth[i])
		}
		values = append(values, p.value(ask, session.Value(&truth[i])))
	}
	return strings.Join(values, p.or)
}

// showed tells from when on there was something to report, and what came.
func (p *paper) showed(ask *quiz.Ask, truth *quiz.Reply) string {
	if truth.AtS == nil {
		return p.nothing
	}
	said := p.shows + " " + p.since(ask, *truth.AtS)
	if truth.EventS != nil {
		said += ", " + p.came + " " + p.since(ask, *truth.EventS)
	}
	return said
}

// since is a time of the scene as whoever watched it counts.
func (p *paper) since(ask *quiz.Ask, at float64) string {
	if ask.Watch != nil {
		at -= ask.Watch.FromS
	}
	return strconv.FormatFloat(at, 'f', 0, 64) + "\u00a0s"
}

// value is a value that an ask was answered with, as a person reads it.
func (p *paper) value(ask *quiz.Ask, value string) string {
	switch {
	case value == "":
		return p.unsure
	case value == session.Quiet:
		return p.quiet
	case ask.Kind == quiz.AskLevel:
		return p.says("scale/" + string(ask.Cue) + "/" + value)
	case ask.Kind == quiz.AskPlane:
		return p.planeAt(value)
	case ask.Kind == quiz.AskMoment:
		at, _ := strconv.ParseFloat(value, 64)
		return p.since(ask, at)
	case ask.Kind == quiz.AskChange && ask.Cue == engine.CueNeutralPlane:
		return p.moved(value)
	}
	return p.says(string(ask.Kind) + "/" + value)
}

// edge is how near to sill or lintel a plane is none that anyone can see (chosen by
// us, as on the screens: pwa/src/words/en/trade.ts).
const edge = 0.05

// planeAt is a neutral plane in words: gas that passes one way only has none.
func (p *paper) planeAt(value string) string {
	of, err := strconv.ParseFloat(value, 64)
	switch {
	case err != nil:
		return value
	case of < edge:
		return p.allOut
	case of > 1-edge:
		return p.allIn
	}
	return share(of) + " " + p.up
}

// place is a value as it stands at its place on a rail.
func (p *paper) place(ask *quiz.Ask, value string) string {
	if of, err := strconv.ParseFloat(value, 64); ask.Kind == quiz.AskPlane && err == nil {
		return share(of)
	}
	return p.value(ask, value)
}

// moved is how a plane changed: it is never more or less, but higher or lower.
func (p *paper) moved(value string) string {
	return map[string]string{string(quiz.Less): p.lower, string(quiz.Same): p.alike, string(quiz.More): p.higher}[value]
}

// cue names what an ask is about.
func (p *paper) cue(cue string) string {
	named := map[string]string{
		string(quiz.AskStage): p.stage, string(quiz.AskRegime): p.regime, string(quiz.AskOpening): p.opening, string(quiz.AskChange): p.change,
		string(quiz.AskTrend): p.trend, string(quiz.AskPick): p.pick, string(quiz.AskMoment): p.moment,
		string(engine.CueFlow): p.flow, string(engine.CueNeutralPlane): p.plane,
	}
	if name, known := named[cue]; known {
		return name
	}
	return p.says("scale/" + cue)
}

// plainWord is a value of the engine as it stands in a table, in every language.
func plainWord(value string) string {
	if value == "" {
		return "cannot tell"
	}
	return strings.ReplaceAll(value, "_", " ")
}

// plainTruth is every right reply to an ask, as it stands in a table.
func plainTruth(truth []quiz.Reply) string {
	var values []string
	for i := range truth {
		values = append(values, plainWord(session.Value(&truth[i])))
	}
	return strings.Join(values, " or ")
}

// clock is a time by the reader's clock, and how far that is from UTC.
func (p *paper) clock(ms int64) string {
	return time.UnixMilli(ms).In(p.zone).Format("2006-01-02 15:04 (UTC-07:00)")
}

func percent(part, whole int) string {
	if whole == 0 {
		return ""
	}
	return strconv.Itoa((100*part+whole/2)/whole) + "\u00a0%"
}

// way says in which direction a cue was missed.
func (p *paper) way(way session.Way) string {
	switch way {
	case session.TooHeavy:
		return p.tooHeavy
	case session.TooLight:
		return p.tooLight
	}
	return p.mixed
}

// steps is a mean of signed steps and which way it leans; nothing where it comes to none.
func (p *paper) steps(mean *float64) string {
	if mean == nil || math.Abs(*mean) < 0.05 {
		return ""
	}
	number := strings.TrimSuffix(strconv.FormatFloat(math.Abs(*mean), 'f', 1, 64), ".0")
	unit, way := p.levels, p.heavy
	if number == "1" {
		unit = p.level
	}
	if *mean < 0 {
		way = p.light
	}
	return strings.Replace(number, ".", p.point, 1) + " " + unit + " " + way
}
