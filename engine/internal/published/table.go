package published

import (
	"strconv"
	"strings"
)

// TB is what of a test this package needs. It is spelled out here so that no
// package of the engine depends on testing.
type TB interface {
	Helper()
	Fatal(args ...any)
}

// Table is one file of published values.
type Table struct {
	Path      string
	Header    map[string]string // the six provenance lines
	Tolerance Tolerance
	Columns   []string
	Rows      []Row
	tb        TB
}

// Row is one line, named by its first cell.
type Row struct {
	Name  string
	table *Table
	cells []string
	tb    TB
}

// Text returns the cell under a column; an unknown column fails the test.
func (r Row) Text(column string) string {
	r.tb.Helper()
	for i, name := range r.table.Columns {
		if name == column {
			return r.cells[i]
		}
	}
	r.tb.Fatal(r.table.Path + ": has no column " + strconv.Quote(column))
	return ""
}

// Has reports whether the cell under a column is filled.
func (r Row) Has(column string) bool {
	r.tb.Helper()
	return r.Text(column) != ""
}

// Float returns the number under a column; anything else fails the test.
func (r Row) Float(column string) float64 {
	r.tb.Helper()
	value, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		r.tb.Fatal(r.table.Path + ": row " + strconv.Quote(r.Name) + " column " + strconv.Quote(column) + ": " + err.Error())
	}
	return value
}

// Allowed is the absolute difference that may lie between want and what is
// computed, by the row's own tolerance or the file's.
func (r Row) Allowed(want float64) float64 {
	r.tb.Helper()
	for i, name := range r.table.Columns {
		if name == "tolerance" && r.cells[i] != "" {
			tolerance, err := ParseTolerance(r.cells[i])
			if err != nil {
				r.tb.Fatal(r.table.Path + ": row " + strconv.Quote(r.Name) + ": " + err.Error())
			}
			return tolerance.Of(want)
		}
	}
	return r.table.Tolerance.Of(want)
}

// Tolerance is how far a computed value may lie from a published one.
type Tolerance struct {
	Value    float64
	Relative bool
}

// Of is the absolute difference allowed about want.
func (t Tolerance) Of(want float64) float64 {
	if !t.Relative {
		return t.Value
	}
	if want < 0 {
		want = -want
	}
	return t.Value * want
}

// ParseTolerance reads "2 % because ..." or "0.02 m because ...".
func ParseTolerance(text string) (Tolerance, error) {
	words := strings.Fields(strings.Replace(text, "%", " % ", 1))
	if len(words) == 0 {
		return Tolerance{}, problem("tolerance", "is empty", `write "2 % because ..."`)
	}
	value, err := strconv.ParseFloat(words[0], 64)
	if err != nil || value < 0 {
		return Tolerance{}, problem("tolerance", "begins with "+strconv.Quote(words[0]), `write "2 % because ..."`)
	}
	if len(words) > 1 && words[1] == "%" {
		return Tolerance{Value: value / 100, Relative: true}, nil
	}
	return Tolerance{Value: value}, nil
}
