package wire_test

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
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
