package command_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/shape"
	"lintel/server/command"
)

// burner is the room of a published series of steady fires: 2.8 m square,
// 2.13 m high, a door of 0.74 by 1.83 m and 62.9 kW in the middle (K. D. Steckler
// and others, NBSIR 82-2520, 1982).
const burner = `{"v":1,"name":"one room, door open","ambient":{"t_c":20,"wind_m_s":0,"wind_from":"A"},
 "compartments":[{"id":"room","width_m":2.8,"depth_m":2.8,"height_m":2.13,"floor_m":0,"lining":"ceramic_fibre"}],
 "openings":[{"id":"door","from":"room","to":"outside","side":"A","kind":"door","sill_m":0,"width_m":0.74,"height_m":1.83,"open":1}],
 "fuels":[{"id":"burner","in":"room","kind":"gas_burner","hrr_kw":[[0,62.9]],"place":"centre"}],
 "moves":[{"t_s":30,"opening":"door","open":0.25}],"end_s":60}`

const look = `{"v":1,"looks":[{"t_s":0,"openings":[{"id":"front_door","kind":"door","state":"open","flow":"both",
 "volume":3,"velocity":3,"density":4,"darkness":4,"colour":"black","churning":true,"flame":"none","window":null,"neutral_plane":0.4}]}]}`

// run calls a command on standard input and returns what it wrote.
func run(f func([]string, io.Reader, io.Writer, io.Writer) int, in string, args ...string) (code int, out, errOut string) {
	var o, e bytes.Buffer
	code = f(args, strings.NewReader(in), &o, &e)
	return code, o.String(), e.String()
}

// decode reads one JSON value strictly into dst: an unknown, missing or
// mistyped field fails.
func decode(t *testing.T, text string, dst any) {
	t.Helper()
	var tree any
	require.NoError(t, json.Unmarshal([]byte(text), &tree))
	require.NoError(t, shape.Decode(tree, dst))
}

func TestSimPrintsASeries(t *testing.T) {
	code, out, errOut := run(command.Sim, burner, "-json", "-every", "10", "-")
	require.Zero(t, code, errOut)
	var s engine.Series
	decode(t, out, &s)
	require.Len(t, s.TS, 7)
	assert.InDelta(t, 60, s.TS[6], 0.06)
	assert.InDelta(t, 62.9, s.HRRKW[2], 6.3)
	assert.Len(t, s.Stage, 7)
	assert.NotNil(t, s.Events)
	room, door := s.Compartments["room"], s.Openings["door"]
	assert.Len(t, room.UpperC, 7)
	assert.Len(t, room.InterfaceM, 7)
	assert.Len(t, door.Cues, 7)
	assert.Equal(t, engine.StateOpen, door.Cues[2].State)
	assert.Equal(t, engine.StatePart, door.Cues[6].State)
	assert.Greater(t, room.UpperC[2], 80.0)
}

func TestSimPrintsCSV(t *testing.T) {
	code, out, errOut := run(command.Sim, burner, "-csv", "-every", "20", "-")
	require.Zero(t, code, errOut)
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1+4)
	assert.Equal(t, []string{"t_s", "hrr_kw", "stage", "room.upper_c"}, rows[0][:4])
	assert.Contains(t, rows[0], "door.neutral_plane")
	assert.Equal(t, "20", rows[2][0])
}

// A room is called as whoever wrote the file pleased.
func TestNoNameInATableIsRun(t *testing.T) {
	code, out, errOut := run(command.Sim, strings.ReplaceAll(burner, `"room"`, `"=1+1;@A1"`), "-csv", "-every", "20", "-")
	require.Zero(t, code, errOut)
	assert.Contains(t, out, ",'=1+1;'@A1.upper_c,")
}

// Whoever wrote a file moves nobody's terminal, by no name in it and by no fault.
func TestNoNameMovesATerminal(t *testing.T) {
	moving := strings.NewReplacer(`"one room`, `"\u001b[31mone\u009bmroom é`, `"room"`, `"ro\u0007om"`).Replace(burner)
	code, out, errOut := run(command.Sim, moving, "-every", "20", "-")
	require.Zero(t, code, errOut)
	assert.Contains(t, out, "?[31mone¿mroom é, door open\n")
	assert.Contains(t, out, "\nro?om\n")
	assert.NotContains(t, out, "\x1b")
	code, _, errOut = run(command.Sim, `{"v":1,"\u001b[31mX":1}`, "-")
	assert.Equal(t, 2, code)
	assert.Contains(t, errOut, "?[31mX is not a field")
	code, out, errOut = run(command.Sim, moving, "-json", "-every", "20", "-")
	require.Zero(t, code, errOut)
	var s engine.Series
	decode(t, out, &s)
	assert.Contains(t, s.Compartments, "ro\aom", "in data names stay as they are")
}

func TestSimReadsAFileAndTalksToAPerson(t *testing.T) {
	path := filepath.Join(t.TempDir(), "room.json")
	require.NoError(t, os.WriteFile(path, []byte(burner), 0o600))
	code, out, errOut := run(command.Sim, "", path, "-every", "5")
	require.Zero(t, code, errOut)
	assert.True(t, strings.HasPrefix(out, command.Training), out)
	assert.Contains(t, out, "one room, door open")
	assert.Contains(t, out, "door: flow both")
}

func TestReadPrintsAFinding(t *testing.T) {
	code, out, errOut := run(command.Read, look, "-json", "-")
	require.Zero(t, code, errOut)
	var f engine.Finding
	decode(t, out, &f)
	sum := 0.0
	for _, p := range f.Stage {
		sum += p
	}
	assert.InDelta(t, 1, sum, 1e-9)
	assert.InDelta(t, 1, f.Regime[engine.FuelLimited]+f.Regime[engine.VentilationLimited], 1e-9)
	assert.Contains(t, f.Openings, "front_door")
	assert.NotEmpty(t, f.Because)
	assert.NotEmpty(t, f.Cautions)
}

func TestReadTalksToAPersonAndGivesNoOrder(t *testing.T) {
	code, out, errOut := run(command.Read, look, "-")
	require.Zero(t, code, errOut)
	assert.True(t, strings.HasPrefix(out, command.Training), out)
	for _, order := range []string{"do not enter", "stay out", "keep closed", " safe", "low risk", "all clear"} {
		assert.NotContains(t, strings.ToLower(out), order)
	}
}

// A number stands beside a rapid event only where it is flagged; words are the
// trade's and not ids; each reason names what it speaks for.
func TestReadIsWordedForAPerson(t *testing.T) {
	code, out, errOut := run(command.Read, look, "-")
	require.Zero(t, code, errOut)
	_, hazards, found := strings.Cut(out, "\nRapid events")
	require.True(t, found)
	hazards, reasons, found := strings.Cut(hazards, "\nBecause")
	require.True(t, found)
	flagged := 0
	for _, line := range strings.Split(hazards, "\n")[1:] {
		if strings.HasPrefix(line, "! ") {
			flagged++
		} else {
			assert.NotContains(t, line, "%")
		}
	}
	assert.Positive(t, flagged)
	for _, id := range []string{"pre flashover", "ventilation limited", "ventilation induced", "_limited", "after knock down", " 0 %"} {
		assert.NotContains(t, out, id)
	}
	assert.Contains(t, out, "in and out by front_door")
	for _, line := range strings.Split(strings.TrimSpace(reasons), "\n")[1:] {
		if strings.HasPrefix(line, "  +") {
			assert.Regexp(t, `^  \+\d\.\d for [a-z-]`, line)
		}
	}
}

// One glance at the flow is no all-clear.
func TestReadSaysWhatWasNotLookedFor(t *testing.T) {
	code, out, errOut := run(command.Read, `{"v":1,"looks":[{"openings":[{"id":"door","kind":"door","state":"open","flow":"both"},{"id":"back","kind":"window"}]}]}`, "-")
	require.Zero(t, code, errOut)
	assert.NotContains(t, out, "no sign of it")
	assert.Contains(t, out, "not looked for yet: pulsing")
	assert.Contains(t, out, "Too little seen to name a stage")
	assert.Contains(t, out, "The look that would change this most")
	assert.NotContains(t, out, "hue at")
}

func TestDrillPrintsOneItemALine(t *testing.T) {
	code, out, errOut := run(command.Drill, "", "-family", "two-way-door", "-seed", "5", "-n", "2", "-json")
	require.Zero(t, code, errOut)
	lines := strings.Split(strings.TrimSpace(out), "\n")
	require.Len(t, lines, 2)
	for i, line := range lines {
		var item map[string]any
		require.NoError(t, json.Unmarshal([]byte(line), &item))
		var names []string
		for name := range item {
			names = append(names, name)
		}
		assert.ElementsMatch(t, []string{"v", "engine", "family", "seed", "moment_s", "kind", "readings", "question", "truth", "cut_margin"}, names)
		assert.Equal(t, float64(5+i), item["seed"])
		assert.Equal(t, "flow_plane", item["kind"])
		var readings engine.Readings
		require.NoError(t, shape.Decode(item["readings"], &readings))
		require.NoError(t, readings.Validate())
	}

	_, again, _ := run(command.Drill, "", "-family", "two-way-door", "-seed", "5", "-n", "2", "-json")
	assert.Equal(t, out, again, "the same seeds give the same items")
	code, text, _ := run(command.Drill, "", "-family", "two-way-door", "-seed", "5")
	require.Zero(t, code)
	assert.True(t, strings.HasPrefix(text, command.Training))
}

// What a drill prints must be fit to be read: its readings go into read.
func TestDrillReadingsGoIntoRead(t *testing.T) {
	code, out, errOut := run(command.Drill, "", "-family", "furnished-room", "-json")
	require.Zero(t, code, errOut)
	var item struct {
		Readings json.RawMessage `json:"readings"`
	}
	require.NoError(t, json.Unmarshal([]byte(out), &item))
	code, _, errOut = run(command.Read, string(item.Readings), "-json", "-")
	require.Zero(t, code, errOut)
}
