package desk

import (
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/spreadsheet"
)

// csvHead is the first line that a roster's table must have.
const csvHead = "call_sign,personnel"

// lineProblem is what is wrong in a line of a table; by its code a page says it in
// its own language.
type lineProblem struct {
	engine.Problem
	code string
}

// Unwrap makes it a problem as any other.
func (p *lineProblem) Unwrap() error { return &p.Problem }

// Code names what is wrong.
func (p *lineProblem) Code() string { return p.code }

func badLine(line int, code, what, do string) error {
	return &lineProblem{engine.Problem{Where: "line " + strconv.Itoa(line), What: what, Do: do}, code}
}

// ReadCSV reads a roster from a table as spreadsheets write it: the head, then one
// person a line, parted by commas, or by the semicolons or tabs that the head is
// parted by; the personnel number may be empty. It takes all or none, and says
// which line is at fault.
func ReadCSV(text string) ([]NewSeat, error) {
	text = strings.ReplaceAll(strings.ReplaceAll(strings.TrimPrefix(text, "\ufeff"), "\r\n", "\n"), "\r", "\n")
	rows := csv.NewReader(strings.NewReader(text))
	rows.FieldsPerRecord = -1
	rows.Comma = partedBy(text)
	head, err := rows.Read()
	if err != nil || len(head) == 0 || !sameHead(head) {
		return nil, badLine(1, "table_head", "is not the head", "begin with "+csvHead+", parted by a comma, a semicolon or a tab")
	}
	var seats []NewSeat
	taken := map[string]int{}
	for {
		row, err := rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, csvProblem(err)
		}
		line, _ := rows.FieldPos(0)
		if len(seats) == quiz.MaxSeats {
			return nil, badLine(line, "table_full", "is one too many", "keep a roster within "+strconv.Itoa(quiz.MaxSeats)+" people")
		}
		seat, err := readRow(row, line, taken)
		if err != nil {
			return nil, err
		}
		seats = append(seats, seat)
	}
	if len(seats) == 0 {
		return nil, badLine(2, "table_empty", "is missing", "give one person a line after the head")
	}
	return seats, nil
}

// partedBy is what parts the values of the first line: a spreadsheet writes
// semicolons where the comma is a decimal sign, and tabs when it copies.
func partedBy(text string) rune {
	head, _, _ := strings.Cut(text, "\n")
	if at := strings.IndexAny(head, ",;\t"); at >= 0 {
		return rune(head[at])
	}
	return ','
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
		return badLine(fault.StartLine, "table_quotes", "has a quotation mark out of place", "put quotation marks around a whole value, and two for one inside")
	}
	return engine.Bad("csv", "cannot be read", "save it as comma separated values in UTF-8")
}

func readRow(row []string, line int, taken map[string]int) (NewSeat, error) {
	if len(row) > 2 {
		return NewSeat{}, badLine(line, "table_values", "has "+strconv.Itoa(len(row))+" values", "give a call sign and a personnel number, nothing else")
	}
	number := ""
	if len(row) == 2 {
		number = strings.TrimSpace(row[1])
	}
	seat := NewSeat{CallSign: strings.TrimSpace(row[0]), Personnel: &number}
	switch {
	case strings.ContainsRune(seat.CallSign, utf8.RuneError):
		return seat, badLine(line, "table_letters", "has a letter that cannot be read", "save the table as UTF-8")
	case !quiz.IsCallSign(seat.CallSign):
		return seat, badLine(line, "table_call_sign", "has no call sign that can be used", "choose 1 to "+strconv.Itoa(quiz.MaxCallSign)+" letters, digits and spaces")
	case !isPersonnel(number):
		return seat, badLine(line, "table_number", "has a personnel number with other than letters, digits, dots and dashes", "give the number as it is in your records, or none")
	}
	again := "give each person their own"
	if first := takenBefore(taken, "call sign "+folded(seat.CallSign), line); first != 0 {
		return seat, badLine(line, "table_sign_again", "has the call sign of line "+strconv.Itoa(first)+" again", again)
	}
	if number == "" {
		return seat, nil
	}
	if first := takenBefore(taken, "number "+number, line); first != 0 {
		return seat, badLine(line, "table_number_again", "has the number of line "+strconv.Itoa(first)+" again", again)
	}
	return seat, nil
}

// takenBefore is the line that has a value already, else 0; the value is then this
// line's.
func takenBefore(taken map[string]int, value string, line int) int {
	first := taken[value]
	if first == 0 {
		taken[value] = line
	}
	return first
}

// WriteCSV writes a roster with its personnel numbers, the only way in which they
// leave the server, besides its keeper's export.
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
