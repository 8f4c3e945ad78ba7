package sim_test

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/sim"
	"lintel/engine/zone"
)

// box is the small box on the bench: two storeys of two 0.6 m cells and a void,
// fire in the lower left cell, its port open and all else shut. Invented.
func box(t testing.TB) engine.Scenario {
	t.Helper()
	text, err := os.ReadFile("testdata/box.json")
	require.NoError(t, err)
	var sc engine.Scenario
	require.NoError(t, json.Unmarshal(text, &sc))
	return sc
}

// bench is a box that is running, with what one looks at before and after a move.
type bench struct {
	t testing.TB
	*sim.Run
	openings map[string]int
	rooms    map[string]int
}

func light(t testing.TB, sc engine.Scenario) *bench {
	t.Helper()
	r, err := sim.New(sc, library(t))
	require.NoError(t, err)
	b := &bench{t: t, Run: r, openings: map[string]int{}, rooms: map[string]int{}}
	for i, o := range sc.Openings {
		b.openings[o.ID] = i
	}
	for i, c := range sc.Compartments {
		b.rooms[c.ID] = i
	}
	return b
}

func (b *bench) twin() *bench {
	c := *b
	c.Run = b.Run.Clone()
	return &c
}

func (b *bench) to(at float64) *bench {
	b.t.Helper()
	require.NoError(b.t, b.Advance(at-b.TimeS()))
	return b
}

func (b *bench) set(opening string, share float64) *bench {
	b.t.Helper()
	require.NoError(b.t, b.Apply(engine.Move{Opening: opening, Open: &share}))
	return b
}

func (b *bench) add(fuel string, mass float64) *bench {
	b.t.Helper()
	require.NoError(b.t, b.Apply(engine.Move{Fuel: fuel, MassKg: &mass, In: "lower_left"}))
	return b
}

func (b *bench) water(litres float64) *bench {
	b.t.Helper()
	require.NoError(b.t, b.Apply(engine.Move{WaterL: &litres, In: "lower_left"}))
	return b
}

// seen is the average of what shows over some seconds.
type seen struct {
	kW, roomKW, flame      float64
	insideKW               float64 // burning in all rooms
	flux, speed, lightness float64 // at one opening: K·V in m²/s, m/s, 0 to 1
	density                float64 // K, 1/m
	plane                  float64 // m above the floor of From
	out, in                float64 // g/s
	upperC                 float64 // of the fire's room
	most                   float64 // highest kW within the time
	mostAt                 float64
}

// watch looks at an opening for some seconds and averages.
func (b *bench) watch(opening string, seconds float64) seen {
	b.t.Helper()
	const every = 0.2
	var s seen
	n, planes := math.Round(seconds/every), 0.0
	s.mostAt = b.TimeS()
	for range int(n) {
		require.NoError(b.t, b.Advance(every))
		i := b.openings[opening]
		p := b.Physical(i)
		v := &b.Model().Vents[i]
		room := &b.Model().Rooms[b.rooms["lower_left"]]
		s.kW += b.Model().HRR / 1000 / n
		s.roomKW += room.Out.BurnW / 1000 / n
		for k := range b.Model().Rooms {
			s.insideKW += b.Model().Rooms[k].Out.BurnW / 1000 / n
		}
		s.flux += p.ExtinctionM * p.OutM3S / n
		s.speed += p.OutVelocityMS / n
		s.lightness += p.Lightness / n
		s.density += p.ExtinctionM / n
		s.out += 1000 * p.OutKgS / n
		s.in += 1000 * p.InKgS / n
		if !math.IsNaN(v.Flow.Neutral) { // an opening that passes one way only has none
			planes++
			s.plane += (v.Flow.Neutral - b.Model().Rooms[v.A].Floor - s.plane) / planes
		}
		s.upperC += (room.Gas[zone.Upper].Temp() - zone.Kelvin) / n
		if kW := b.Model().HRR / 1000; kW > s.most {
			s.most, s.mostAt = kW, b.TimeS()
		}
	}
	for i := range b.Model().Fires {
		s.flame = math.Max(s.flame, b.Model().Fires[i].Flame)
	}
	return s
}
