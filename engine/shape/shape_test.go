package shape_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/shape"
)

func tree(t *testing.T, text string) any {
	t.Helper()
	var v any
	require.NoError(t, json.Unmarshal([]byte(text), &v))
	return v
}

const scenario = `{"v":1,"ambient":{"t_c":20,"wind_m_s":3,"wind_from":"A"},
 "compartments":[{"id":"room","width_m":2.8,"depth_m":2.8,"height_m":2.1,"floor_m":0,"lining":"gypsum","leak_m2":null}],
 "openings":[{"id":"door","from":"room","to":"outside","side":"A","kind":"door","sill_m":0,"width_m":0.7,"height_m":1.8,"open":1}],
 "fuels":[{"id":"burner","in":"room","kind":"gas_burner","hrr_kw":[[0,0],[10,62.9]]}],"end_s":900}`

func TestDecodeReadsAScenario(t *testing.T) {
	var s engine.Scenario
	require.NoError(t, shape.Decode(tree(t, scenario), &s))
	assert.Equal(t, engine.Alpha, s.Ambient.WindFrom)
	assert.Nil(t, s.Compartments[0].LeakM2, "null is absent")
	assert.Equal(t, [][2]float64{{0, 0}, {10, 62.9}}, s.Fuels[0].HRRKW)
}

func TestDecodeSaysWhere(t *testing.T) {
	cases := map[string]struct{ from, to, where string }{
		"unknown field":   {`"depth_m":2.8`, `"depth_m":2.8,"colour":1`, "compartments[0].colour"},
		"missing field":   {`"id":"door",`, ``, "openings[0].id"},
		"text for number": {`"height_m":2.1`, `"height_m":"2.1"`, "compartments[0].height_m"},
		"object for list": {`[[0,0],[10,62.9]]`, `{}`, "fuels[0].hrr_kw"},
		"short pair":      {`[10,62.9]`, `[10]`, "fuels[0].hrr_kw[1]"},
		"half version":    {`"v":1,`, `"v":1.5,`, "v"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			broken := replaceOnce(t, scenario, c.from, c.to)
			var s engine.Scenario
			err := shape.Decode(tree(t, broken), &s)
			var problem *engine.Problem
			require.ErrorAs(t, err, &problem)
			assert.Equal(t, c.where, problem.Where)
			assert.NotEmpty(t, problem.Do)
		})
	}
}

func TestDecodeRefusesNaN(t *testing.T) {
	object := tree(t, scenario).(map[string]any)
	object["end_s"] = math.NaN()
	var s engine.Scenario
	assert.ErrorContains(t, shape.Decode(object, &s), "end_s is not a finite number")
}

// The tree must say what encoding/json says, for the server writes JSON and the
// phone takes the tree.
func TestEncodeAgreesWithJSON(t *testing.T) {
	half := 0.5
	level := 3
	values := []any{
		engine.Reading{ID: "door", Volume: &level, NeutralPlane: &half},
		engine.Finding{Stage: map[engine.Stage]float64{engine.Growth: 1}, Path: []string{"door"}},
		engine.Series{TS: []float64{0, 1}, Stage: []engine.Stage{engine.Incipient}},
	}
	for _, v := range values {
		text, err := json.Marshal(v)
		require.NoError(t, err)
		want := tree(t, string(text))
		assert.Equal(t, dropNil(want), dropNil(shape.Encode(v)))
	}
}

// dropNil forgets the difference between an empty list and null, which
// encoding/json makes for nil slices and a reader of ours does not.
func dropNil(v any) any {
	switch x := v.(type) {
	case map[string]any:
		for name, value := range x {
			if kept := dropNil(value); kept == nil {
				delete(x, name)
			} else {
				x[name] = kept
			}
		}
		if len(x) == 0 {
			return nil
		}
		return x
	case []any:
		if len(x) == 0 {
			return nil
		}
		for i := range x {
			x[i] = dropNil(x[i])
		}
		return x
	}
	return v
}

func TestRoundTrip(t *testing.T) {
	var once, twice engine.Scenario
	require.NoError(t, shape.Decode(tree(t, scenario), &once))
	require.NoError(t, shape.Decode(shape.Encode(once), &twice))
	assert.Equal(t, once, twice)
}

func replaceOnce(t *testing.T, text, from, to string) string {
	t.Helper()
	require.Contains(t, text, from)
	return strings.Replace(text, from, to, 1)
}
