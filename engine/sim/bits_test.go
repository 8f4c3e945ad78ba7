package sim_test

import (
	"flag"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/engine/sim/gauge"
)

var update = flag.Bool("update", false, "write testdata/bits.txt, told.txt and samples.txt anew")

const scenarios = 500

// Five hundred scenarios end in the same bits on every machine: the files were written
// by a native run, and this test also runs as WebAssembly. bits.txt is the fire's own
// state, told.txt what a frame tells of it, and samples.txt a few numbers on the way, so
// that a difference has a time, a name and a size. A change of any changes its file, the
// commit says what changed, and the version rises: an answer to one fire must never be
// judged by another.
func TestBitsAreTheSameEverywhere(t *testing.T) {
	head := "engine " + engine.Version
	bits := kept{file: "testdata/bits.txt"}
	told := kept{file: "testdata/told.txt", now: []string{head}}
	samples := kept{file: "testdata/samples.txt", now: []string{head + ": scenario, s, " + strings.Join(sampled, ", ")}}
	for seed := range uint64(scenarios) {
		at, state, frame := playBits(t, seed)
		bits.now = append(bits.now, bitsLine(seed, state))
		told.now = append(told.now, bitsLine(seed, frame))
		samples.now = append(samples.now, at...)
	}
	was := lines(t, told.file)
	if *update {
		changed := bits.differs(t) != "" || told.differs(t) != ""
		require.False(t, changed && len(was) > 0 && was[0] == head, "raise engine.Version first: its fires have changed")
	}
	for _, k := range []kept{samples, bits, told} {
		switch d := k.differs(t); {
		case d == "":
		case *update:
			write(t, k.file, k.now)
		default:
			t.Fatal(d)
		}
	}
}

// kept is a file of lines and what this run would write there.
type kept struct {
	file string
	now  []string
}

func (k kept) differs(t *testing.T) string { return difference(lines(t, k.file), k.now) }

func bitsLine(seed, bits uint64) string {
	return strconv.FormatUint(seed, 10) + " " + strconv.FormatUint(bits, 16)
}

// sampled are the numbers beside the bits.
var sampled = []string{"heat_kw", "hottest_upper_c", "pressure_pa", "out_kg_s"}

// playBits runs one scenario: its numbers half-way and at its end, and the bits of its
// last state and of the frame that tells it.
func playBits(t *testing.T, seed uint64) (samples []string, state, told uint64) {
	t.Helper()
	sc := gauge.RandomHouse(1000 + seed)
	if seed == 0 {
		sc = box(t)
	}
	for i, o := range sc.Openings {
		sc.Moves = append(sc.Moves, engine.Move{TS: float64(5 + 3*i), Opening: o.ID, Open: ptr(float64(i%3) / 2), OverS: 2})
	}
	sc.Moves = append(sc.Moves, engine.Move{TS: 50, WaterL: ptr(0.5), In: sc.Compartments[0].ID})
	r, err := sim.New(sc, library(t))
	require.NoError(t, err)
	for range 2 {
		require.NoError(t, r.Advance(30))
		samples = append(samples, sample(seed, r.Clone())) // a look leaves its mark: ratings do not flutter
	}
	var frame engine.Frame
	r.Frame(&frame)
	return samples, r.Model().Hash(), gauge.Hash(frame.AppendTo(nil))
}

func sample(seed uint64, r *sim.Run) string {
	var f engine.Frame
	r.Frame(&f)
	hottest, pressure, out := math.Inf(-1), 0.0, 0.0
	for i := range f.Compartments {
		hottest, pressure = math.Max(hottest, f.Compartments[i].UpperC), pressure+f.Compartments[i].PressurePa
	}
	for i := range f.Openings {
		out += f.Openings[i].OutKgS
	}
	said := []string{strconv.FormatUint(seed, 10), strconv.FormatFloat(f.Header.TS, 'f', 0, 64)}
	for _, x := range []float64{f.Header.HRRKW, hottest, pressure, out} {
		said = append(said, strconv.FormatFloat(x, 'g', -1, 64))
	}
	return strings.Join(said, " ")
}

// difference is the first of two lists of lines as one sentence, "" where they are the same.
func difference(want, got []string) string {
	if len(want) != len(got) {
		return strconv.Itoa(len(got)) + " lines, " + strconv.Itoa(len(want)) + " in the file: write it anew with -update"
	}
	first, others := "", 0
	for i := range want {
		switch {
		case want[i] == got[i]:
		case first == "":
			first = told(strings.Fields(want[i]), strings.Fields(got[i]))
		default:
			others++
		}
	}
	if others > 0 {
		first += "; " + strconv.Itoa(others) + " more lines of " + strconv.Itoa(len(want)) + " differ"
	}
	return first
}

// told names what differs in a line: of samples a number, of bits all of the state.
func told(want, got []string) string {
	if want[0] == "engine" || len(want) != len(got) || want[0] != got[0] {
		return "the file has " + strings.Join(want, " ") + ", this run " + strings.Join(got, " ")
	}
	if len(want) == 2 {
		return "scenario " + want[0] + " at 60 s: the bits of its end are " + got[1] + ", the file has " + want[1] + ", and no sampled number differs"
	}
	for i, name := range sampled {
		if want[2+i] != got[2+i] {
			return "scenario " + want[0] + " at " + want[1] + " s: " + name + " is " + got[2+i] + ", the file has " + want[2+i]
		}
	}
	return ""
}

func lines(t *testing.T, file string) []string {
	t.Helper()
	text, err := os.ReadFile(file)
	if *update && os.IsNotExist(err) {
		return nil
	}
	require.NoError(t, err)
	return strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
}

func write(t *testing.T, file string, all []string) {
	t.Helper()
	require.NoError(t, os.WriteFile(file, []byte(strings.Join(all, "\n")+"\n"), 0o644))
}

// A difference is one line that says which scenario, when, which number and both values.
func TestADifferenceOfBitsIsOneLine(t *testing.T) {
	was := []string{"engine 1", "0 30 1.5 200 -3 0.25", "0 60 2.5 210 -3 0.25", "1 30 7 20 0 0"}
	assert.Empty(t, difference(was, was))
	now := []string{"engine 1", "0 30 1.5 200 -3 0.25", "0 60 2.5 210.00000000000003 -3 0.26", "1 30 8 20 0 0"}
	assert.Equal(t, "scenario 0 at 60 s: hottest_upper_c is 210.00000000000003, the file has 210; 1 more lines of 4 differ", difference(was, now))
	assert.Equal(t, "scenario 4 at 60 s: the bits of its end are b, the file has a, and no sampled number differs", difference([]string{"4 a"}, []string{"4 b"}))
	assert.Equal(t, "1 lines, 2 in the file: write it anew with -update", difference([]string{"", ""}, []string{""}))
	assert.Equal(t, "the file has engine 1, this run engine 2", difference([]string{"engine 1"}, []string{"engine 2"}))
}
