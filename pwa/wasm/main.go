//go:build js && wasm

// Command wasm is the engine on the phone: the offline twin of the server. It
// puts one object, lintel, on the global scope and decides nothing itself.
// Every call takes and returns plain JavaScript values; a mistake in what it was
// given comes back as {error: {where, what, do}}.
package main

import (
	"errors"
	"syscall/js"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
	"lintel/pwa/wasm/wire"
	"lintel/quiz"
	"lintel/quiz/progress"
)

func main() {
	var fires runs
	lintel := object.New()
	for name, call := range map[string]call{
		"version":  version,
		"read":     read,
		"families": families,
		"item":     makeItem,
		"score":    score,
		"progress": progressOf,
		"form":     form,
		"open":     fires.open,
		"advance":  fires.advance,
		"move":     fires.move,
		"events":   fires.events,
		"readings": fires.readings,
		"clone":    fires.clone,
		"close":    fires.close,
	} {
		lintel.Set(name, js.FuncOf(func(_ js.Value, args []js.Value) any { return answer(call, args) }))
	}
	js.Global().Set("lintel", lintel)
	select {}
}

// call is one function of lintel.
type call func(args []js.Value) (any, error)

// answer runs a call and puts its result, or its problem, into JavaScript.
func answer(c call, args []js.Value) js.Value {
	result, err := c(args)
	if err == nil {
		return toJS(wire.Encode(result))
	}
	problem := &engine.Problem{What: err.Error()}
	errors.As(err, &problem)
	return toJS(map[string]any{"error": map[string]any{"where": problem.Where, "what": problem.What, "do": problem.Do}})
}

// argument returns the i-th argument as a tree, nil where it is missing.
func argument(args []js.Value, i int) any {
	if i >= len(args) {
		return nil
	}
	return fromJS(args[i])
}

func version([]js.Value) (any, error) {
	return map[string]any{"engine": engine.Version, "content": content.Version}, nil
}

func read(args []js.Value) (any, error) {
	var readings engine.Readings
	if err := wire.Decode(argument(args, 0), &readings); err != nil {
		return nil, err
	}
	if err := readings.Validate(); err != nil {
		return nil, err
	}
	return infer.Read(content.Rules(), readings), nil
}

func families([]js.Value) (any, error) {
	list := []any{}
	for _, f := range content.Families() {
		pairs := []any{}
		for i := range f.Pairs {
			pairs = append(pairs, wire.Encode(f.Pairs[i]))
		}
		list = append(list, map[string]any{
			"id": f.ID, "title": f.Words("title"), "kind": string(f.Kind), "lesson": f.Lesson, "pairs": pairs,
		})
	}
	return list, nil
}

func makeItem(args []js.Value) (any, error) {
	var want quiz.Scene
	tree := map[string]any{"family": argument(args, 0), "seed": argument(args, 1), "contrast": argument(args, 2), "own": argument(args, 3)}
	if err := wire.Decode(tree, &want); err != nil {
		return nil, err
	}
	return scenes.Item(want)
}

func score(args []js.Value) (any, error) {
	var answer quiz.Answer
	if err := wire.Decode(argument(args, 0), &answer); err != nil {
		return nil, err
	}
	return scenes.Score(answer)
}

// scenes are those made last.
var scenes content.Memory

func progressOf(args []js.Value) (any, error) {
	var attempts []quiz.Attempt
	if err := wire.Decode(argument(args, 0), &attempts); err != nil {
		return nil, err
	}
	return progress.Of(attempts), nil
}

func form(args []js.Value) (any, error) {
	kind, _ := argument(args, 0).(string)
	person, _ := argument(args, 1).(string)
	return content.Form(quiz.FormKind(kind), person)
}
