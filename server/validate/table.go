package validate

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// table is one file of published rows. Its provenance stands in the lines that
// begin with #; engine/internal/published has them checked by a test.
type table struct {
	path    string
	columns map[string]int
	rows    [][]string
}

// row is one line of a table; the first cell names it.
type row struct {
	name  string
	cells []string
	in    *table
}

// DataFolder looks for testdata/validation from the working folder upward.
func DataFolder() (string, error) {
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		data := filepath.Join(folder, "testdata", "validation")
		if _, err := os.Stat(data); err == nil {
			return data, nil
		}
		up := filepath.Dir(folder)
		if up == folder {
			return "", fmt.Errorf("testdata/validation: was not found above the working folder: run inside the source tree or give -data")
		}
		folder = up
	}
}

func readTable(folder, name string) (*table, error) {
	path := filepath.Join(folder, name)
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	if len(lines) < 2 {
		return nil, fmt.Errorf("%s: has no rows: restore the file", path)
	}
	t := &table{path: path, columns: map[string]int{}, rows: lines[1:]}
	for i, name := range lines[0] {
		t.columns[strings.TrimSpace(name)] = i
	}
	return t, nil
}

// all lists the rows in order.
func (t *table) all() []row {
	list := make([]row, len(t.rows))
	for i, cells := range t.rows {
		list[i] = row{name: cells[0], cells: cells, in: t}
	}
	return list
}

// where lists the rows that hold a value in a column.
func (t *table) where(column, value string) []row {
	var list []row
	for _, r := range t.all() {
		if r.text(column) == value {
			list = append(list, r)
		}
	}
	return list
}

// text is the cell under a column; a column that is not there is a programmer's
// error, which the test of this package would meet.
func (r row) text(column string) string {
	i, ok := r.in.columns[column]
	if !ok {
		panic(r.in.path + ": has no column " + column)
	}
	return strings.TrimSpace(r.cells[i])
}

// number is NaN for a cell that is empty or a word.
func (r row) number(column string) float64 {
	x, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil {
		return math.NaN()
	}
	return x
}
