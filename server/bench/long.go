package bench

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"lintel/engine"
)

// Long is the long form of a figure: rounds counted from zero, as many as time
// allows, resumed where the last run stopped.
type Long struct {
	Goal  uint64
	Unit  string                 // of one round, plural
	Slice time.Duration          // of one Run; 30 s where it is 0
	Stamp func() (string, error) // changes with what is tested; the count then starts anew
	// Run does rounds from the given one until the context ends, and returns the
	// round it reached. An error is a fault that it found, in one sentence.
	Run func(ctx context.Context, from uint64) (reached uint64, fault error)
}

// slice is how long a run works between two notes of how far it came, so that a
// run which is cut loses little. Chosen by us.
const slice = 30 * time.Second

// RunLong works on the long forms of the chosen figures for a time, shared
// evenly, and writes one line for each. How far each came is kept in the
// checkout's .ci/long.json, which bench reads.
func RunLong(ctx context.Context, figures []Figure, only string, total time.Duration, out io.Writer) error {
	figures = withLong(figures)
	chosen := choose(figures, Options{Only: only})
	if len(chosen) == 0 {
		return engine.Bad("-only", strconv.Quote(only)+" names no figure with a long run", "use one of "+strings.Join(names(figures), ", "))
	}
	for _, f := range chosen {
		r, err := runLong(ctx, f, total/time.Duration(len(chosen)))
		if err != nil {
			return err
		}
		if _, err := fmt.Fprintf(out, "%-16s %s\n", f.Name, r.words(f.Long)); err != nil {
			return err
		}
	}
	return nil
}

func withLong(figures []Figure) []Figure {
	return slices.DeleteFunc(slices.Clone(figures), func(f Figure) bool { return f.Long == nil })
}

func runLong(ctx context.Context, f Figure, share time.Duration) (reached, error) {
	stamp, err := f.Long.Stamp()
	if err != nil {
		return reached{}, err
	}
	r, err := recall(f.Name, stamp)
	if err != nil {
		return reached{}, err
	}
	until := time.Now().Add(share)
	for r.Fault == "" && r.Rounds < f.Long.Goal && ctx.Err() == nil && time.Now().Before(until) {
		part, cancel := context.WithTimeout(ctx, min(max(slice, f.Long.Slice), time.Until(until)))
		now, fault := f.Long.Run(part, r.Rounds)
		cancel()
		r.Rounds, r.Date = now, time.Now().UTC().Format(time.DateOnly)
		if fault != nil {
			r.Fault = fault.Error()
		}
		if err := note(f.Name, r); err != nil {
			return r, err
		}
	}
	return r, nil
}

// told is what bench says of a figure's long run.
func (l *Long) told(name string) string {
	stamp, err := l.Stamp()
	if err != nil {
		return "; long run: " + err.Error()
	}
	r, err := recall(name, stamp)
	if err != nil {
		return "; long run: " + err.Error()
	}
	return "; long run (.ci/long): " + r.words(l)
}

func (r reached) words(l *Long) string {
	text := fmt.Sprintf("%d of %d %s", r.Rounds, l.Goal, l.Unit)
	switch {
	case r.Rounds == 0 && r.Fault == "":
		return "not begun since the last change of what it tests"
	case r.Fault != "":
		return text + ", " + r.Date + ": FAULT: " + r.Fault
	}
	return text + ", none wrong, " + r.Date
}
