package desk

import (
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/spreadsheet"
)

// csvHead is the first line that a roster's CSV must have.
const csvHead = "call_sign,personnel"

// ReadCSV reads a roster from a spreadsheet: the head, then one person a line, the
// personnel number may be empty. It takes all or none, and says which line is at
// fault.
func ReadCSV(text string) ([]NewSeat, error) {
	rows := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff")))
	rows.FieldsPerRecord = -1
	head, err := rows.Read()
	if err != nil || len(head) == 0 || !sameHead(head) {
		return nil, engine.Bad("line 1", "is not the head", "begin with "+csvHead+", separated by commas")
	}
	var seats []NewSeat
	lines := map[string]int{}
	for {
		row, err := rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, csvProblem(err)
		}
		line, _ := rows.FieldPos(0)
		seat, err := readRow(row, line, lines)
		if err != nil {
			return nil, err
		}
		seats = append(seats, seat)
	}
	if len(seats) == 0 {
		return nil, engine.Bad("line 2", "is missing", "give one person a line after the head")
	}
	if len(seats) > quiz.MaxSeats {
		return nil, engine.Bad("line "+strconv.Itoa(quiz.MaxSeats+2), "is one too many", "keep a roster within "+strconv.Itoa(quiz.MaxSeats)+" people")
	}
	return seats, nil
}

func sameHead(head []string) bool {
	want := strings.Split(csvHead, ",")
	for i := range head {
		if i >= len(want) || strings.TrimSpace(strings.ToLower(head[i])) != want[i] {
			return false
		}
	}
	return true
}

func csvProblem(err error) error {
	var fault *csv.ParseError
	if errors.As(err, &fault) {
		return engine.Bad("line "+strconv.Itoa(fault.Line), "has a quotation mark out of place", "put quotation marks around a whole value, and two for one inside")
	}
	return engine.Bad("csv", "cannot be read", "save it as comma separated values in UTF-8")
}

func readRow(row []string, line int, lines map[string]int) (NewSeat, error) {
	where := "line " + strconv.Itoa(line)
	if len(row) > 2 {
		return NewSeat{}, engine.Bad(where, "has "+strconv.Itoa(len(row))+" values", "give a call sign and a personnel number, nothing else")
	}
	number := ""
	if len(row) == 2 {
		number = strings.TrimSpace(row[1])
	}
	seat := NewSeat{CallSign: strings.TrimSpace(row[0]), Personnel: &number}
	switch {
	case !quiz.IsCallSign(seat.CallSign):
		return seat, engine.Bad(where, "has no call sign that can be used", "choose 1 to "+strconv.Itoa(quiz.MaxCallSign)+" letters, digits and spaces")
	case !isPersonnel(number):
		return seat, engine.Bad(where, "has a personnel number with other than letters, digits, dots and dashes", "give the number as it is in your records, or none")
	}
	for what, value := range map[string]string{"call sign": folded(seat.CallSign), "number": number} {
		if value == "" {
			continue
		}
		if first, taken := lines[what+value]; taken {
			return seat, engine.Bad(where, "has the "+what+" of line "+strconv.Itoa(first)+" again", "give each person their own")
		}
		lines[what+value] = line
	}
	return seat, nil
}

// WriteCSV writes a roster with its personnel numbers, the only way in which they
// leave the server.
func (d *Desk) WriteCSV(by quiz.Instructor, id string, w io.Writer) error {
	row, err := d.rosters().get(id)
	if err != nil {
		return err
	}
	if err := d.store.Save(quiz.Deed{By: by.CallSign, Did: "export_roster", What: row.value.Title}); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	if err := out.Write(strings.Split(csvHead, ",")); err != nil {
		return err
	}
	for _, s := range row.value.Seats {
		if err := out.Write([]string{spreadsheet.Plain(s.CallSign), spreadsheet.Plain(s.Personnel)}); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// Exported keeps on record that somebody took the papers of a class away.
func (d *Desk) Exported(by quiz.Instructor, class string) error {
	return d.store.Save(quiz.Deed{By: by.CallSign, Did: "export_report", What: class})
}
