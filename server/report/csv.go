package report

import (
	"encoding/csv"
	"errors"
	"io"
	"strconv"

	"lintel/quiz/session"
	"lintel/server/spreadsheet"
)

var columns = []string{"call_sign", "person", "scene", "title", "family", "seed", "ask", "cue", "given", "true", "error", "steps", "right", "doubted", "late", "sheet", "confidence", "took_s"}

// CSV writes one row a person, scene and ask (RFC 4180), under a row that holds the
// caution. Columns and values are called the same in every language.
func CSV(r *session.Report, to Reader, w io.Writer) error {
	say := speak(to)
	rows := csv.NewWriter(w)
	rows.UseCRLF = true
	head := say.caution
	if r.Rehearsal {
		head += " " + say.rehearsal
	}
	if err := errors.Join(rows.Write([]string{head}), rows.Write(columns)); err != nil {
		return err
	}
	scenes := map[string]*session.BoardScene{}
	for i := range r.Scenes {
		scenes[r.Scenes[i].ID] = &r.Scenes[i]
	}
	for i := range r.People {
		for j := range r.People[i].Answers {
			answer := &r.People[i].Answers[j]
			for k := range answer.Parts {
				if err := rows.Write(row(&r.People[i], scenes[answer.Scene], answer, &answer.Parts[k], to.Says)); err != nil {
					return err
				}
			}
		}
	}
	rows.Flush()
	return rows.Error()
}

func row(p *session.PersonReport, scene *session.BoardScene, answer *session.PersonAnswer, part *session.PersonPart, says Says) []string {
	cells := []string{p.CallSign, strconv.Itoa(p.Person), strconv.Itoa(scene.Number), says(scene.Title), scene.Family, strconv.FormatUint(scene.Seed, 10),
		part.Ask, part.Cue, plainWord(session.Value(&part.Given)), plainTruth(part.Truth), strconv.FormatFloat(part.Error, 'f', 4, 64), "",
		yes(part.Right), yes(part.Doubted), yes(answer.Late), yes(answer.Sheet), "", strconv.FormatFloat(answer.TookS, 'f', 1, 64)}
	if part.Steps != nil {
		cells[11] = strconv.Itoa(*part.Steps)
	}
	if answer.Confidence != nil {
		cells[16] = strconv.FormatFloat(*answer.Confidence, 'f', 2, 64)
	}
	for i := range cells {
		cells[i] = spreadsheet.Plain(cells[i])
	}
	return cells
}

func yes(b bool) string {
	if b {
		return "1"
	}
	return "0"
}
