package bench_test

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/bench"
)

// checkout is an empty one, to keep a record in.
func checkout(t *testing.T) {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(folder, ".ci"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(folder, ".ci", "long"), nil, 0o644))
	t.Chdir(folder)
}

// counting is a figure whose rounds count up by two a slice.
func counting(stamp string, fault error) bench.Figure {
	return bench.Figure{
		Name: "rounds", Measure: func(context.Context) (bench.Result, error) { return bench.Result{Holds: true}, nil },
		Long: &bench.Long{
			Goal: 6, Unit: "rounds", Stamp: func() (string, error) { return stamp, nil },
			Run: func(_ context.Context, from uint64) (uint64, error) { return from + 2, fault },
		},
	}
}

func runLong(t *testing.T, f bench.Figure, total time.Duration) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, bench.RunLong(context.Background(), []bench.Figure{f}, "", total, &out))
	return out.String()
}

func TestALongRunGoesOnWhereItStopped(t *testing.T) {
	checkout(t)
	assert.Contains(t, runLong(t, counting("a", nil), time.Nanosecond), "not begun")
	assert.Contains(t, runLong(t, counting("a", nil), time.Minute), "6 of 6 rounds, none wrong")

	var out bytes.Buffer
	require.NoError(t, bench.Run(context.Background(), []bench.Figure{counting("a", nil)}, bench.Options{}, &out))
	assert.Contains(t, out.String(), "6 of 6 rounds")
	out.Reset()
	require.NoError(t, bench.Run(context.Background(), []bench.Figure{counting("b", nil)}, bench.Options{}, &out))
	assert.Contains(t, out.String(), "not begun", "what it tests has changed: the count is void")
}

func TestALongRunKeepsTheFaultItFound(t *testing.T) {
	checkout(t)
	said := runLong(t, counting("a", errors.New("house 5 leaks")), time.Minute)
	assert.Contains(t, said, "FAULT: house 5 leaks")
	assert.Contains(t, runLong(t, counting("a", nil), time.Minute), "FAULT", "it is not run over")
}

func TestAFigureWithoutALongRunIsAnError(t *testing.T) {
	assert.ErrorContains(t, bench.RunLong(context.Background(), figures(), "good", time.Second, &bytes.Buffer{}), "good")
}
