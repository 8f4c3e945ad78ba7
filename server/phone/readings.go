package phone

import "lintel/engine"

// SampleReadings is a full readings file: a house of four rooms with its plan,
// looked at three times from all sides, as a careful person would fill it in.
// pwa/wasm/measure.mjs is given the same.
func SampleReadings() engine.Readings {
	plan := engine.Plan{
		Compartments: []engine.Compartment{
			{ID: "lounge", WidthM: 4, DepthM: 4, HeightM: 2.4, Lining: "gypsum"},
			{ID: "hall", WidthM: 2, DepthM: 4, HeightM: 2.4, Lining: "gypsum"},
			{ID: "landing", WidthM: 2, DepthM: 4, HeightM: 2.4, FloorM: 2.7, Lining: "gypsum"},
			{ID: "bedroom", WidthM: 4, DepthM: 4, HeightM: 2.4, FloorM: 2.7, Lining: "gypsum"},
		},
		Openings: []engine.Opening{
			{ID: "front_door", From: "hall", To: engine.Outside, Side: engine.Alpha, Kind: engine.Door, WidthM: 0.9, HeightM: 2, Open: ptr(1.0)},
			{ID: "lounge_window", From: "lounge", To: engine.Outside, Side: engine.Alpha, Kind: engine.Window, SillM: 0.9, WidthM: 1.4, HeightM: 1.1, Open: ptr(0.0)},
			{ID: "bedroom_window", From: "bedroom", To: engine.Outside, Side: engine.Charlie, Kind: engine.Window, SillM: 0.9, WidthM: 1.2, HeightM: 1.1, Open: ptr(1.0)},
			{ID: "lounge_door", From: "hall", To: "lounge", Side: engine.Bravo, Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: ptr(1.0)},
			{ID: "stair", From: "landing", To: "hall", Kind: engine.FloorHole, AreaM2: 1.8, Shape: "square", Open: ptr(1.0)},
			{ID: "bedroom_door", From: "landing", To: "bedroom", Side: engine.Bravo, Kind: engine.Door, WidthM: 0.8, HeightM: 2, Open: ptr(0.3)},
		},
	}
	readings := engine.Readings{V: 1, Building: &engine.Building{Kind: "house", Storeys: ptr(2)}, Plan: &plan}
	for i := range 3 {
		readings.Looks = append(readings.Looks, engine.Look{
			TS:   ptr(float64(20 * i)),
			Wind: &engine.Wind{MS: ptr(3.0), From: engine.Alpha},
			Openings: []engine.Reading{
				seen("front_door", engine.SeenDoor, engine.FlowBoth, 1+i, engine.Grey),
				seen("lounge_window", engine.SeenWindow, engine.FlowOut, 1+i, engine.DarkGrey),
				seen("bedroom_window", engine.SeenWindow, engine.FlowOut, i, engine.LightGrey),
			},
		})
	}
	return readings
}

func seen(id string, kind engine.SeenKind, flow engine.Flow, level int, colour engine.Colour) engine.Reading {
	return engine.Reading{
		ID: id, Kind: kind, State: engine.StateOpen, Flow: flow, Colour: colour,
		Volume: ptr(level), Velocity: ptr(level), Density: ptr(level), Darkness: ptr(level),
		Churning: ptr(level > 2), Pulsing: ptr(false), Vanishes: ptr(false), Flame: engine.FlameNone,
	}
}

func ptr[T any](v T) *T { return &v }
