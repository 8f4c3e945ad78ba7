package engine_test

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

// number fills every field of a struct of float64 with the next numbers and
// returns them in field order, so that a field added to a frame but forgotten
// in AppendTo cannot pass.
func number(part any, next *float64) []float64 {
	v := reflect.ValueOf(part).Elem()
	var filled []float64
	for i := range v.NumField() {
		*next++
		v.Field(i).SetFloat(*next)
		filled = append(filled, *next)
	}
	return filled
}

func TestAppendToKeepsFieldOrder(t *testing.T) {
	frame := engine.Frame{Compartments: make([]engine.CompartmentFrame, 2), Openings: make([]engine.OpeningFrame, 3)}
	next := 0.0
	want := number(&frame.Header, &next)
	for i := range frame.Compartments {
		want = append(want, number(&frame.Compartments[i], &next)...)
	}
	for i := range frame.Openings {
		want = append(want, number(&frame.Openings[i], &next)...)
	}
	assert.Equal(t, want, frame.AppendTo(nil))
	assert.Equal(t, len(want), frame.Length())
}

func TestAppendToAllocatesNothingWhenReused(t *testing.T) {
	frame := engine.Frame{Compartments: make([]engine.CompartmentFrame, 12), Openings: make([]engine.OpeningFrame, 32)}
	out := frame.AppendTo(nil)
	require.Zero(t, testing.AllocsPerRun(100, func() { out = frame.AppendTo(out[:0]) }))
}
