package command_test

import (
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/server/command"
)

type function = func([]string, io.Reader, io.Writer, io.Writer) int

// Every bad input ends with exit code 2, one line that says where and what, and
// an empty output.
func TestBadInputIsRefusedInOneLine(t *testing.T) {
	with := func(text, old, now string) string {
		changed := strings.Replace(text, old, now, 1)
		if changed == text {
			t.Fatalf("%q is not in the input", old)
		}
		return changed
	}
	file := []string{"-json", "-"}
	cases := map[string]struct {
		run  function
		in   string
		args []string
		says string
	}{
		"no file named":         {command.Sim, burner, nil, "give one scenario file"},
		"two files named":       {command.Sim, burner, []string{"a", "b"}, "give one scenario file"},
		"an unknown flag":       {command.Sim, burner, []string{"-xml", "-"}, "-xml"},
		"both forms":            {command.Sim, burner, []string{"-json", "-csv", "-"}, "one of -json and -csv"},
		"a row every nothing":   {command.Sim, burner, []string{"-every", "0", "-"}, "-every"},
		"a row every NaN":       {command.Sim, burner, []string{"-every", "NaN", "-"}, "-every"},
		"a file that is not":    {command.Sim, "", []string{"/nowhere/room.json"}, "/nowhere/room.json: cannot be opened"},
		"a folder":              {command.Sim, "", []string{"."}, ".: cannot be read"},
		"an empty file":         {command.Sim, "", file, "is empty"},
		"half a file":           {command.Sim, burner[:len(burner)/2], file, "is cut short"},
		"something after":       {command.Sim, burner + "{}", file, "goes on after its end"},
		"a NaN":                 {command.Sim, with(burner, "62.9", "NaN"), file, "not JSON"},
		"an unknown field":      {command.Sim, with(burner, `"t_c":20`, `"t_c":20,"t_f":68`), file, "ambient.t_f is not a field known here"},
		"a field twice":         {command.Sim, with(burner, `"v":1,`, `"v":1,"v":1,`), file, "v is given twice"},
		"a missing field":       {command.Sim, with(burner, `"depth_m":2.8,`, ""), file, "compartments[0].depth_m is missing"},
		"a word for a number":   {command.Sim, with(burner, `"height_m":1.83`, `"height_m":"tall"`), file, "openings[0].height_m is text"},
		"an opening to nowhere": {command.Sim, with(burner, `"to":"outside"`, `"to":"cellar"`), file, "openings[0].to is \"cellar\", which leads nowhere"},
		"a door above the roof": {command.Sim, with(burner, `"height_m":1.83`, `"height_m":3`), file, "openings[0].height_m"},
		"a missing fuel":        {command.Sim, with(burner, `"kind":"gas_burner","hrr_kw":[[0,62.9]]`, `"kind":"moon_cheese","mass_kg":1`), file, "fuels[0].kind is \"moon_cheese\""},
		"petrol by power":       {command.Sim, with(burner, `"kind":"gas_burner"`, `"kind":"petrol"`), file, "fuels[0].kind is \"petrol\""},
		"an unknown lining":     {command.Sim, with(burner, "ceramic_fibre", "lava"), file, "compartments[0].lining is \"lava\""},
		"another version":       {command.Sim, with(burner, `"v":1`, `"v":2`), file, "v is 2"},
		"no looks":              {command.Read, `{"v":1,"looks":[]}`, file, "looks has 0 entries"},
		"level five":            {command.Read, with(look, `"density":4`, `"density":5`), file, "looks[0].openings[0].density is 5"},
		"half a level":          {command.Read, with(look, `"density":4`, `"density":2.5`), file, "looks[0].openings[0].density is 2.5"},
		"an unknown colour":     {command.Read, with(look, `"black"`, `"mauve"`), file, "looks[0].openings[0].colour is \"mauve\""},
		"readings as a list":    {command.Read, "[]", file, "is a list"},
		"no family":             {command.Drill, "", []string{"-json"}, "name a -family"},
		"an unknown family":     {command.Drill, "", []string{"-family", "nobody"}, "two-way-door"},
		"no items":              {command.Drill, "", []string{"-family", "two-way-door", "-n", "0"}, "-n"},
		"a seed beyond scripts": {command.Drill, "", []string{"-family", "two-way-door", "-seed", "9007199254740992"}, "seed is 9007199254740992"},
		"a negative seed":       {command.Drill, "", []string{"-family", "two-way-door", "-seed", "-1"}, "seed"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			code, out, errOut := run(c.run, c.in, c.args...)
			assert.Equal(t, 2, code, errOut)
			assert.Empty(t, out)
			assert.Contains(t, errOut, c.says)
			assert.Equal(t, 1, strings.Count(errOut, "\n"), errOut)
		})
	}
}

// endless never ends; a reader without a limit would never return.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	return len(p), nil
}

func TestAFileWithoutEndIsRefused(t *testing.T) {
	var out, errOut strings.Builder
	code := command.Read([]string{"-json", "-"}, endless{}, &out, &errOut)
	assert.Equal(t, 2, code)
	assert.Empty(t, out.String())
	assert.Contains(t, errOut.String(), "larger than")
}
