package bench_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/server/bench"
)

func figures() []bench.Figure {
	return []bench.Figure{
		{Name: "good", Unit: "s", Goal: "1", Measure: func(context.Context) (bench.Result, error) {
			return bench.Result{Ours: 0.5, Control: 2.0, Holds: true, How: "by hand"}, nil
		}},
		{Name: "slow", Slow: true, Measure: func(context.Context) (bench.Result, error) {
			return bench.Result{Ours: 3.0, Holds: false}, nil
		}},
		{Name: "broken", Measure: func(context.Context) (bench.Result, error) { return bench.Result{}, errors.New("no disk") }},
		{Name: "never", Needs: "a phone"},
	}
}

func run(t *testing.T, o bench.Options) map[string]map[string]any {
	t.Helper()
	var out bytes.Buffer
	o.JSON = true
	require.NoError(t, bench.Run(context.Background(), figures(), o, &out))
	lines := map[string]map[string]any{}
	for _, text := range strings.Split(strings.TrimSpace(out.String()), "\n") {
		var l map[string]any
		require.NoError(t, json.Unmarshal([]byte(text), &l))
		lines[l["figure"].(string)] = l
	}
	return lines
}

func TestUnmeasuredIsNullNeverAPass(t *testing.T) {
	lines := run(t, bench.Options{})
	assert.Equal(t, true, lines["good"]["holds"])
	for _, name := range []string{"slow", "broken", "never"} {
		assert.Contains(t, lines[name], "holds")
		assert.Nil(t, lines[name]["holds"], name)
		assert.Nil(t, lines[name]["ours"], name)
		assert.Contains(t, lines[name]["how"], "not measured", name)
	}
}

func TestAllMeasuresTheSlow(t *testing.T) {
	assert.Equal(t, false, run(t, bench.Options{All: true})["slow"]["holds"])
	only := run(t, bench.Options{Only: "slow"})
	assert.Len(t, only, 1)
	assert.Equal(t, false, only["slow"]["holds"])
}

func TestUnknownFigureIsAnError(t *testing.T) {
	err := bench.Run(context.Background(), figures(), bench.Options{Only: "speed"}, &bytes.Buffer{})
	assert.ErrorContains(t, err, "speed")
}
