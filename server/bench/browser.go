package bench

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// script runs one of pwa/bench's node scripts and decodes the JSON line it
// prints. It needs a checkout with its front-end packages installed.
func script(ctx context.Context, into any, name string, args ...string) error {
	path, err := inCheckout(filepath.Join("pwa", "bench", name))
	if err != nil {
		return err
	}
	cmd := exec.CommandContext(ctx, "node", append([]string{path}, args...)...)
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("node %s: %w: %s", name, err, lastLine(complaint.String()))
	}
	return json.Unmarshal(out.Bytes(), into)
}

// inCheckout finds a file of the project from the working folder upward.
func inCheckout(path string) (string, error) {
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		full := filepath.Join(folder, path)
		if _, err := os.Stat(full); err == nil {
			return full, nil
		}
		parent := filepath.Dir(folder)
		if parent == folder {
			return "", errors.New(path + " is not here: run bench from a checkout")
		}
		folder = parent
	}
}

func lastLine(text string) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	return lines[len(lines)-1]
}

// firstPaint is the first screen on a slow phone, and whether it came before
// the engine.
var firstPaint = Figure{
	Name: "first_paint", Unit: "ms", Goal: "1.15 times the control, before the engine; blocking 50 ms, shift 0", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		server, err := startSelf(ctx)
		if err != nil {
			return Result{}, err
		}
		defer server.stop()
		var m struct {
			Largest float64  `json:"largest_ms"`
			Control float64  `json:"control_ms"`
			Blocked float64  `json:"blocked_ms"`
			Shift   float64  `json:"shift"`
			Bytes   float64  `json:"bytes"`
			Engine  *float64 `json:"engine_ms"`
			Rounds  int      `json:"rounds"`
		}
		if err := script(ctx, &m, "first-paint.mjs", server.url); err != nil {
			return Result{}, err
		}
		beforeEngine := m.Engine == nil || m.Largest < *m.Engine
		return Result{
			Ours: m.Largest, Control: m.Control,
			Holds: m.Largest <= 1.15*m.Control && beforeEngine && m.Blocked <= 50 && m.Shift == 0,
			How: fmt.Sprintf("largest paint at 150 ms, 1.6 Mbit/s, processor 4 times slower, median of %d; engine arrived %s; blocking %.0f ms, shift %.3f, %.1f kB before the paint; control: a null page of equal bytes",
				m.Rounds, arrival(m.Engine), m.Blocked, m.Shift, m.Bytes/1000),
		}, nil
	},
}

func arrival(ms *float64) string {
	if ms == nil {
		return "only when asked for"
	}
	return fmt.Sprintf("at %.0f ms", *ms)
}
