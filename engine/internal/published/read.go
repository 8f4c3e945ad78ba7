package published

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"lintel/engine"
)

// Keys are the provenance lines of a file, each once.
var Keys = []string{"source", "where", "seen", "quantity", "unit", "tolerance"}

// Read reads a table by its path under testdata, e.g. "fire/steckler_1982.csv".
// Any flaw fails the test.
func Read(tb TB, path string) *Table {
	tb.Helper()
	table, err := Parse(tb, path, string(Bytes(tb, path)))
	if err != nil {
		tb.Fatal(err.Error())
	}
	return table
}

// Bytes reads any file by its path under testdata.
func Bytes(tb TB, path string) []byte {
	tb.Helper()
	root, err := Root()
	if err != nil {
		tb.Fatal(err.Error())
	}
	data, err := os.ReadFile(filepath.Join(root, "testdata", filepath.FromSlash(path)))
	if err != nil {
		tb.Fatal(err.Error())
	}
	return data
}

// Root is the folder that holds go.mod, upward from where the test runs.
func Root() (string, error) {
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(folder, "go.mod")); err == nil {
			return folder, nil
		}
		up := filepath.Dir(folder)
		if up == folder {
			return "", problem("go.mod", "was not found above the test", "run the test inside the module")
		}
		folder = up
	}
}

// Parse reads a table's text. Its rows fail the given test when they are misread.
func Parse(tb TB, path, text string) (*Table, error) {
	table := &Table{Path: path, Header: map[string]string{}, tb: tb}
	for _, line := range strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n") {
		var err error
		switch {
		case strings.TrimSpace(line) == "":
		case strings.HasPrefix(line, "#"):
			err = table.provenance(line)
		default:
			err = table.line(line)
		}
		if err != nil {
			return nil, err
		}
	}
	return table, table.finish()
}

func (t *Table) provenance(line string) error {
	key, value, found := strings.Cut(strings.TrimSpace(strings.TrimPrefix(line, "#")), ":")
	value = strings.TrimSpace(value)
	switch {
	case !found || !slices.Contains(Keys, key):
		return problem(t.Path, "has the unknown provenance line \""+line+"\"", "use "+strings.Join(Keys, ", "))
	case t.Header[key] != "":
		return problem(t.Path, "gives "+key+" twice", "give it once")
	case value == "":
		return problem(t.Path, "leaves "+key+" empty", "fill it in")
	case t.Columns != nil:
		return problem(t.Path, "gives "+key+" below the table", "move it to the top")
	}
	t.Header[key] = value
	return nil
}

func (t *Table) line(line string) error {
	cells, err := split(line)
	switch {
	case err != nil:
		return problem(t.Path, "line \""+line+"\" "+err.Error(), "close the quote")
	case t.Columns == nil:
		t.Columns = cells
		return nil
	case len(cells) != len(t.Columns):
		return problem(t.Path, "row \""+cells[0]+"\" has another number of cells than there are columns", "fill or empty each column")
	}
	for _, row := range t.Rows {
		if row.Name == cells[0] {
			return problem(t.Path, "has two rows named \""+cells[0]+"\"", "name each row once")
		}
	}
	t.Rows = append(t.Rows, Row{Name: cells[0], table: t, cells: cells, tb: t.tb})
	return nil
}

func (t *Table) finish() error {
	for _, key := range Keys {
		if t.Header[key] == "" {
			return problem(t.Path, "lacks the line \"# "+key+":\"", "say it at the top")
		}
	}
	if len(t.Rows) == 0 {
		return problem(t.Path, "has no rows", "give at least one")
	}
	var err error
	t.Tolerance, err = ParseTolerance(t.Header["tolerance"])
	return err
}

func problem(where, what, do string) error { return engine.Bad(where, what, do) }
