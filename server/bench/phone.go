package bench

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"

	"lintel/server/phone"
)

const (
	readingGoalMS = 20.0
	wasmGoalKB    = 750.0
	wasmSpeedGoal = 1500.0
	nativeCalls   = 300
)

// measured is the phone's engine, built, weighed and timed once a run.
type measured struct {
	times        phone.Times
	packed, bare int
}

var measurePhone = sync.OnceValues(func() (measured, error) {
	ctx := context.Background()
	mod, err := inCheckout("go.mod")
	if err != nil {
		return measured{}, err
	}
	folder, err := os.MkdirTemp("", "lintel-bench-*")
	if err != nil {
		return measured{}, err
	}
	m, err := buildAndTime(ctx, filepath.Dir(mod), folder)
	return m, errors.Join(err, os.RemoveAll(folder))
})

func buildAndTime(ctx context.Context, root, folder string) (m measured, err error) {
	ours, err := phone.Build(ctx, root, folder)
	if err != nil {
		return m, err
	}
	if _, m.packed, err = ours.Size(); err != nil {
		return m, err
	}
	bare, err := phone.BuildBare(ctx, root, folder)
	if err != nil {
		return m, err
	}
	if _, m.bare, err = bare.Size(); err != nil {
		return m, err
	}
	m.times, err = ours.Times(ctx)
	return m, err
}

// readingWasm is one reading on the phone's engine. Control: the same reading
// by the same code on this machine without WebAssembly.
var readingWasm = Figure{
	Name: "reading_wasm", Unit: "ms", Goal: "20",
	Measure: func(context.Context) (Result, error) {
		m, err := measurePhone()
		if err != nil {
			return Result{}, err
		}
		native := phone.ReadNative(phone.SampleReadings(), nativeCalls)
		return Result{
			Ours: m.times.Read.P95MS, Control: native.P95MS, Holds: m.times.Read.P95MS <= readingGoalMS,
			How: fmt.Sprintf("95th percentile of %d readings of a house of four rooms with three looks, next look included, in node (median %.1f ms); control: the same native",
				m.times.Read.Calls, m.times.Read.MedianMS),
		}, nil
	},
}

// wasmBytes is what the engine weighs as it travels. Control: a Go program that
// does nothing, built the same way.
var wasmBytes = Figure{
	Name: "wasm_bytes", Unit: "kB", Goal: "750",
	Measure: func(context.Context) (Result, error) {
		m, err := measurePhone()
		if err != nil {
			return Result{}, err
		}
		ours := float64(m.packed) / 1000
		return Result{
			Ours: ours, Control: float64(m.bare) / 1000, Holds: ours <= wasmGoalKB,
			How: "WebAssembly compressed with brotli 11; control: an empty Go program built with the same flags",
		}, nil
	},
}

// fireSpeedWasm is the fire on the phone's engine.
var fireSpeedWasm = Figure{
	Name: "fire_speed_wasm", Unit: "times real time", Goal: "1,500 (3,000 in the long term)",
	Measure: func(ctx context.Context) (Result, error) {
		m, err := measurePhone()
		if err != nil {
			return Result{}, err
		}
		native, err := fireSpeed.Measure(ctx)
		if err != nil {
			return Result{}, err
		}
		return Result{
			Ours: m.times.FireSpeed, Control: native.Ours, Holds: m.times.FireSpeed >= wasmSpeedGoal,
			How: fmt.Sprintf("540 s of six compartments with every opening moved, in node; one frame of 1/30 s: 95th percentile %.2f ms; control: a like house native", m.times.Frame.P95MS),
		}, nil
	},
}

const readOutGoalMS = 4.0

// fireReadOut is a tenth of a second of fire and its frame on a slow phone.
var fireReadOut = Figure{
	Name: "fire_read_out", Unit: "ms", Goal: "4", Slow: true,
	Measure: func(ctx context.Context) (r Result, err error) {
		mod, err := inCheckout("go.mod")
		if err != nil {
			return Result{}, err
		}
		folder, err := os.MkdirTemp("", "lintel-bench-*")
		if err != nil {
			return Result{}, err
		}
		defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
		engine, err := phone.Build(ctx, filepath.Dir(mod), folder)
		if err != nil {
			return Result{}, err
		}
		args, err := engine.Command(ctx)
		if err != nil {
			return Result{}, err
		}
		var m struct {
			P95     float64 `json:"p95_ms"`
			Median  float64 `json:"median_ms"`
			Control float64 `json:"control_ms"`
			Plain   float64 `json:"control_median_ms"`
		}
		if err := script(ctx, &m, "fire-readout.mjs", args...); err != nil {
			return Result{}, err
		}
		return Result{
			Ours: m.P95, Control: m.Control, Holds: m.P95 <= readOutGoalMS,
			How: fmt.Sprintf("95th percentile of 400 calls that advance six compartments by 0.1 s and fill the frame, in Chromium with its processor 4 times slower (median %.2f ms); control: a plain loop that takes as long at the median (%.2f ms)", m.Median, m.Plain),
		}, nil
	},
}
