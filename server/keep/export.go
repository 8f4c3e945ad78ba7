package keep

import (
	"encoding/csv"
	"encoding/json"
	"errors"
	"io"
	"strconv"
	"time"

	"lintel/quiz"
	"lintel/server/spreadsheet"
)

// caution heads every export.
const caution = "TRAINING, NOT AN INCIDENT. A training record from Lintel; it is no proof of fitness for duty."

// page is how many rows are read at a time (chosen by us).
const page = 200

// eachDevice visits every device in order of id.
func eachDevice(s quiz.Store, visit func(quiz.Device) error) error {
	for after := ""; ; {
		devices, err := s.Devices(after, page)
		if err != nil || len(devices) == 0 {
			return err
		}
		for _, d := range devices {
			if err := visit(d); err != nil {
				return err
			}
		}
		after = devices[len(devices)-1].ID
	}
}

// eachRecord visits every record of a device in order.
func eachRecord(s quiz.Store, device string, visit func(quiz.Record) error) error {
	for after := uint64(0); ; {
		records, err := s.Records(device, after, page)
		if err != nil || len(records) == 0 {
			return err
		}
		for _, r := range records {
			if err := visit(r); err != nil {
				return err
			}
		}
		after = records[len(records)-1].Seq
	}
}

// exportLines writes one JSON object a line: a head, then each device with its
// records after it, then what instructors keep.
func exportLines(s quiz.Store, w io.Writer) error {
	lines := json.NewEncoder(w)
	lines.SetEscapeHTML(false)
	head := struct {
		V       int    `json:"v"`
		Caution string `json:"caution"`
	}{1, caution}
	if err := lines.Encode(head); err != nil {
		return err
	}
	err := eachDevice(s, func(d quiz.Device) error {
		if err := lines.Encode(d); err != nil {
			return err
		}
		return eachRecord(s, d.ID, func(r quiz.Record) error { return lines.Encode(r) })
	})
	if err != nil {
		return err
	}
	return exportDesk(s, lines)
}

var columns = []string{"call_sign", "device", "seq", "kind", "device_time_utc", "received_utc", "family", "seed", "engine", "content", "score", "scored_by", "took_s", "confidence", "class", "scene", "place"}

// exportCSV writes one row a record for a spreadsheet (RFC 4180), under a row
// that holds the caution. The score is the server's where it recomputed it. What
// was answered in a rehearsal is nobody's record and is left out.
func exportCSV(s quiz.Store, w io.Writer) error {
	rows := csv.NewWriter(w)
	rows.UseCRLF = true
	if err := errors.Join(rows.Write([]string{caution}), rows.Write(columns)); err != nil {
		return err
	}
	err := eachDevice(s, func(d quiz.Device) error {
		return eachRecord(s, d.ID, func(r quiz.Record) error {
			cells, rehearsed := row(d, r)
			if rehearsed {
				return nil
			}
			return rows.Write(cells)
		})
	})
	rows.Flush()
	return errors.Join(err, rows.Error())
}

// row is one record in the order of columns, and whether it was rehearsed.
func row(d quiz.Device, r quiz.Record) (cells []string, rehearsed bool) {
	var body struct {
		Answer  quiz.Answer `json:"answer"`
		Verdict struct {
			Score *float64 `json:"score"`
		} `json:"verdict"`
		Class quiz.ClassRef `json:"class"`
	}
	// A body of another version may not fit; its columns then stay empty.
	if r.Kind == quiz.AnswerEvent && json.Unmarshal(r.Body, &body) != nil {
		body.Answer, body.Verdict.Score, body.Class = quiz.Answer{}, nil, quiz.ClassRef{}
	}
	score, by := body.Verdict.Score, ""
	if r.Check != nil {
		by = string(r.Check.State)
		if r.Check.Verdict != nil {
			score = &r.Check.Verdict.Score
		}
	}
	seed, took := "", ""
	if body.Answer.Family != "" {
		seed, took = strconv.FormatUint(body.Answer.Seed, 10), strconv.FormatFloat(body.Answer.TookS, 'f', 1, 64)
	}
	cells = []string{d.CallSign, d.ID, strconv.FormatUint(r.Seq, 10), string(r.Kind), clock(r.TClient), clock(r.ReceivedMS),
		body.Answer.Family, seed, r.Engine, body.Answer.Content, decimal(score), by, took, decimal(body.Answer.Confidence),
		body.Class.ID, body.Class.Scene, body.Class.Place}
	for i := range cells {
		cells[i] = spreadsheet.Plain(cells[i])
	}
	return cells, body.Class.Rehearsal
}

func clock(ms int64) string { return time.UnixMilli(ms).UTC().Format(time.RFC3339) }

func decimal(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'f', 4, 64)
}
