package content_test

import (
	"strconv"
	"testing"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/infer"
)

// eightOpenings is a house seen in part: the next look has most to try here.
func eightOpenings() engine.Readings {
	look := engine.Look{}
	for i := range 8 {
		look.Openings = append(look.Openings, engine.Reading{
			ID: "o" + strconv.Itoa(i), Side: engine.Sides[i%4], Floor: new(1 + i/4), Kind: engine.SeenWindow,
			State: engine.StateOpen, Velocity: new(i % 5), Darkness: new((i + 2) % 5), WidthM: new(1.0), HeightM: new(1.0),
		})
	}
	return engine.Readings{V: 1, Looks: []engine.Look{look}}
}

// The goal is 20 ms in WebAssembly, next look and all.
func BenchmarkRead(b *testing.B) {
	r := eightOpenings()
	for b.Loop() {
		infer.Read(content.Rules(), r)
	}
}
