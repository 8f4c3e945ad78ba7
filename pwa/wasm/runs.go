//go:build js && wasm

package main

import (
	"strconv"
	"syscall/js"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/sim"
	"lintel/pwa/wasm/wire"
)

// Limits of fires open at once and of one advance, chosen by us: a bench with
// its branches, and a call that a phone finishes in about a second.
const (
	mostRuns     = 32
	mostAdvanceS = 900
)

// fire is a running scenario, with the room that its frames are written into:
// here and in JavaScript, so that a frame makes no value anew on either side.
type fire struct {
	run      *sim.Run
	scenario engine.Scenario
	frame    engine.Frame
	numbers  []float64
	sent     js.Value // Float64Array of a frame's length
	bytes    js.Value // the same as a Uint8Array
}

// runs holds the open fires by number.
type runs struct {
	fires map[int]*fire
	last  int
}

// open starts a scenario and returns its number and the order of its parts.
func (r *runs) open(args []js.Value) (any, error) {
	var scenario engine.Scenario
	if err := wire.Decode(argument(args, 0), &scenario); err != nil {
		return nil, err
	}
	run, err := sim.New(scenario, content.Library())
	if err != nil {
		return nil, err
	}
	return r.add(&fire{run: run, scenario: scenario})
}

// clone branches a fire: two of them from one instant.
func (r *runs) clone(args []js.Value) (any, error) {
	f, err := r.at(args)
	if err != nil {
		return nil, err
	}
	return r.add(&fire{run: f.run.Clone(), scenario: f.scenario})
}

func (r *runs) add(f *fire) (any, error) {
	if len(r.fires) >= mostRuns {
		return nil, engine.Bad("run", "is one fire too many", "close one of the "+strconv.Itoa(mostRuns)+" that are open")
	}
	if r.fires == nil {
		r.fires = map[int]*fire{}
	}
	f.run.Frame(&f.frame)
	f.sent = floats.New(f.frame.Length())
	f.bytes = bytesIn(f.sent)
	r.last++
	r.fires[r.last] = f
	compartments, openings := []any{}, []any{}
	for _, c := range f.scenario.Compartments {
		compartments = append(compartments, c.ID)
	}
	for _, o := range f.scenario.Openings {
		openings = append(openings, o.ID)
	}
	return map[string]any{"run": r.last, "compartments": compartments, "openings": openings, "frameLength": f.frame.Length()}, nil
}

func (r *runs) at(args []js.Value) (*fire, error) {
	if len(args) > 0 && args[0].Type() == js.TypeNumber {
		if f := r.fires[args[0].Int()]; f != nil {
			return f, nil
		}
	}
	return nil, engine.Bad("run", "is no open fire", "give the number that open or clone returned")
}

// advance runs a fire on and fills the Float64Array given with its frame.
func (r *runs) advance(args []js.Value) (any, error) {
	f, err := r.at(args)
	if err != nil {
		return nil, err
	}
	if len(args) < 2 || args[1].Type() != js.TypeNumber || !(args[1].Float() >= 0 && args[1].Float() <= mostAdvanceS) {
		return nil, engine.Bad("seconds", "is not a time to run on", "give a number from 0 to "+strconv.Itoa(mostAdvanceS))
	}
	length := f.frame.Length()
	if len(args) < 3 || !args[2].InstanceOf(floats) || args[2].Length() != length {
		return nil, engine.Bad("out", "is not a frame", "give a Float64Array of "+strconv.Itoa(length))
	}
	if err := f.run.Advance(args[1].Float()); err != nil {
		return nil, err
	}
	f.run.Frame(&f.frame)
	f.numbers = f.frame.AppendTo(f.numbers[:0])
	js.CopyBytesToJS(f.bytes, bytesOf(f.numbers))
	args[2].Call("set", f.sent)
	return nil, nil
}

func (r *runs) move(args []js.Value) (any, error) {
	f, err := r.at(args)
	if err != nil {
		return nil, err
	}
	tree := argument(args, 1)
	if fields, ok := tree.(map[string]any); ok && fields["t_s"] == nil {
		fields["t_s"] = 0.0 // a move made by hand happens now
	}
	var move engine.Move
	if err := wire.Decode(tree, &move); err != nil {
		return nil, err
	}
	return nil, f.run.Apply(move)
}

func (r *runs) events(args []js.Value) (any, error) {
	f, err := r.at(args)
	if err != nil {
		return nil, err
	}
	return f.run.Events(), nil
}

func (r *runs) readings(args []js.Value) (any, error) {
	f, err := r.at(args)
	if err != nil {
		return nil, err
	}
	return f.run.Readings(), nil
}

func (r *runs) close(args []js.Value) (any, error) {
	if _, err := r.at(args); err != nil {
		return nil, err
	}
	delete(r.fires, args[0].Int())
	return nil, nil
}
