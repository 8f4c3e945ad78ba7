package wire_test

import (
	"encoding/json"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/engine/shape"
	"lintel/pwa/wasm/wire"
	"lintel/quiz"
)

// answers are one of everything that the engine gives back, as full as it comes.
func answers(t *testing.T) []any {
	t.Helper()
	made, truth, err := content.Make("window-breaks", 3)
	require.NoError(t, err)
	given := answer(made)
	verdict, err := content.Score(given)
	require.NoError(t, err)
	finding := infer.Read(content.Rules(), truth.Exact)
	require.NotEmpty(t, finding.Because)
	none := engine.Finding{Stage: map[engine.Stage]float64{engine.Growth: math.NaN()}}
	return []any{
		made, verdict, finding, none, truth.Exact, engine.Readings{V: 1, Looks: []engine.Look{}},
		[]engine.Event{{TS: 3, Kind: "flashover", Where: "room"}}, []quiz.Scene{{Family: "f", Seed: 1 << 52}},
		quiz.Progress{V: 1, Skills: []quiz.SkillProgress{{Skill: quiz.SkillFlow, Kappa: new(0.5)}}, Calls: quiz.CallProgress{Calibration: []quiz.Bin{{Low: 0.5}}}},
	}
}

func answer(made quiz.Item) quiz.Answer {
	given := quiz.Answer{V: 1, Engine: made.Engine, Content: made.Content, Family: made.Family, Seed: made.Seed, TookS: 3.5, Confidence: new(0.75)}
	for i, ask := range made.Question.Asks {
		reply := quiz.Reply{Ask: ask.ID, Unsure: i == 0}
		if i > 0 && ask.Kind == quiz.AskFlow {
			reply.Flow = engine.FlowBoth
		} else {
			reply.Unsure = true
		}
		given.Replies = append(given.Replies, reply)
	}
	return given
}

func TestWritingAgreesWithShape(t *testing.T) {
	for _, v := range answers(t) {
		assert.Equal(t, shape.Encode(v), wire.Encode(v), "%T", v)
	}
}

// given are trees of everything that the engine takes, with what they are read into.
func given(t *testing.T) map[string]struct {
	tree any
	into func() any
} {
	t.Helper()
	made, truth, err := content.Make("water-on", 3)
	require.NoError(t, err)
	reading := truth.Exact
	reading.Building = &engine.Building{Kind: "house", Storeys: new(2)}
	attempt := quiz.Attempt{Family: "f", Kind: quiz.CallStage, Parts: []quiz.Part{{Truth: []quiz.Reply{{AtS: new(3.0)}}, Steps: new(-1)}}}
	return map[string]struct {
		tree any
		into func() any
	}{
		"scenario": {shape.Encode(made.Scenario), func() any { return new(engine.Scenario) }},
		"readings": {shape.Encode(reading), func() any { return new(engine.Readings) }},
		"move":     {shape.Encode(engine.Move{TS: 1, WaterL: new(4.0), In: "room"}), func() any { return new(engine.Move) }},
		"answer":   {shape.Encode(answer(made)), func() any { return new(quiz.Answer) }},
		"scene":    {shape.Encode(quiz.Scene{Family: "f", Seed: 3, Contrast: &quiz.Contrast{Levels: []int{1, 2}}}), func() any { return new(quiz.Scene) }},
		"attempts": {shape.Encode([]quiz.Attempt{attempt}), func() any { return new([]quiz.Attempt) }},
	}
}

// Sound or spoiled, a tree is read as engine/shape reads it: into the same value,
// or with the same fault.
func TestReadingAgreesWithShape(t *testing.T) {
	refused := 0
	for name, c := range given(t) {
		draw := rand.New(rand.NewPCG(1, uint64(len(name))))
		for turn := range 1500 {
			tree := clone(c.tree)
			if turn > 0 {
				tree = spoil(draw, tree)
			}
			ours, theirs := c.into(), c.into()
			err, want := wire.Decode(tree, ours), shape.Decode(tree, theirs)
			require.Equal(t, want, err, "%s, turn %d", name, turn)
			if want != nil {
				refused++
				continue
			}
			require.Equal(t, theirs, ours, "%s, turn %d", name, turn)
		}
	}
	assert.Greater(t, refused, 1000)
}

var oddities = []any{0.0, -1.0, 0.5, math.NaN(), math.Inf(1), 1e300, "", "room", nil, true, []any{}, []any{nil}, []any{1.0, 2.0}, map[string]any{}, struct{}{}}

// spoil changes one thing somewhere in a tree.
func spoil(draw *rand.Rand, tree any) any {
	switch v := tree.(type) {
	case map[string]any:
		switch names := slices.Sorted(maps.Keys(v)); {
		case draw.IntN(12) == 0 || len(names) == 0:
			v["more"] = 1.0
		case draw.IntN(12) == 0:
			delete(v, names[draw.IntN(len(names))])
		default:
			name := names[draw.IntN(len(names))]
			v[name] = spoil(draw, v[name])
		}
		return v
	case []any:
		if len(v) > 0 {
			i := draw.IntN(len(v))
			v[i] = spoil(draw, v[i])
			return v
		}
	}
	return oddities[draw.IntN(len(oddities))]
}

func clone(tree any) any {
	switch v := tree.(type) {
	case map[string]any:
		made := map[string]any{}
		for name, item := range v {
			made[name] = clone(item)
		}
		return made
	case []any:
		made := make([]any, len(v))
		for i, item := range v {
			made[i] = clone(item)
		}
		return made
	}
	return tree
}

func TestATypeWithoutLayoutIsAProgrammersError(t *testing.T) {
	assert.Panics(t, func() { _ = wire.Decode(map[string]any{}, new(struct{})) })
	assert.Panics(t, func() { wire.Encode(struct{}{}) })
}

// across carries a tree over as the phone does, with JavaScript's part played by
// the library's own JSON.
func across(t *testing.T, tree any) any {
	t.Helper()
	text, numbers := wire.Spell(tree)
	spelled := make([]string, len(numbers))
	for i, x := range numbers {
		spelled[i] = strconv.FormatFloat(x, 'g', -1, 64)
	}
	var made any
	require.NoError(t, json.Unmarshal([]byte(wire.Fill(text, strings.Join(spelled, ","))), &made))
	return made
}

func TestATextCarriesEveryTree(t *testing.T) {
	for _, v := range answers(t) {
		tree := wire.Encode(v)
		assert.Equal(t, tree, across(t, tree), "%T", v)
	}
	for _, tree := range []any{
		nil, "", true, false, 3.0, []any{}, map[string]any{}, map[string]any{"": []any{map[string]any{}, nil, []any{"x"}}},
		"a \"quoted\" \\ line\nand \x01\x1f a mark, ° and 火", 0.1 + 0.2, 5e-324, -1.7976931348623157e308, 1e21, -0.5,
	} {
		assert.Equal(t, tree, across(t, tree))
	}
	assert.True(t, math.Signbit(across(t, math.Copysign(0, -1)).(float64)))
	assert.Equal(t, 7.0, across(t, 7))
	assert.Panics(t, func() { wire.Spell(struct{}{}) })
}

func TestATextIsReadAsItWasWritten(t *testing.T) {
	plainly := 0
	for name, c := range given(t) {
		written, err := json.Marshal(c.tree)
		require.NoError(t, err)
		numbers, plain := wire.NumbersIn(string(written))
		if !plain {
			continue
		}
		plainly++
		var list []float64
		require.NoError(t, json.Unmarshal([]byte("["+numbers+"]"), &list))
		assert.Equal(t, c.tree, wire.Tree(string(written), list), name)
	}
	assert.Greater(t, plainly, 2)
	for text, numbers := range map[string]string{
		`{"a":[-1.5e-7,{}],"3":"4, 5","b":[],"c":true,"d":[false,1e+21]}`: "-1.5e-7,1e+21", `"12"`: "", `-0`: "-0", `[[1],[2]]`: "1,2",
	} {
		found, plain := wire.NumbersIn(text)
		assert.True(t, plain, text)
		assert.Equal(t, numbers, found, text)
		var want any
		require.NoError(t, json.Unmarshal([]byte(text), &want))
		var list []float64
		require.NoError(t, json.Unmarshal([]byte("["+found+"]"), &list))
		assert.Equal(t, want, wire.Tree(text, list), text)
	}
	for _, text := range []string{`{"a":null}`, `[1,null]`, `"a\"b"`, `{"a\n":1}`} {
		_, plain := wire.NumbersIn(text)
		assert.False(t, plain, text)
	}
}
