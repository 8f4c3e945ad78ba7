package bench

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
)

// marker opens the line in which a test states what it measured. A figure that
// is held against published values is measured where those are read, in a test;
// bench runs that test and passes on what it said.
const marker = "FIGURE "

// fromTest runs one test and decodes the figure that it logs into result. The
// figure holds when the test passes.
func fromTest(ctx context.Context, pkg, test string, result any) (passed bool, err error) {
	mod, err := inCheckout("go.mod")
	if err != nil {
		return false, err
	}
	cmd := exec.CommandContext(ctx, "go", "test", "-count=1", "-v", "-run", "^"+test+"$", pkg)
	cmd.Dir = filepath.Dir(mod)
	out, failed := cmd.CombinedOutput()
	text, err := statement(out)
	if err != nil {
		return false, fmt.Errorf("%s in %s: %w", test, pkg, err)
	}
	return failed == nil, json.Unmarshal(text, result)
}

// statement finds the figure in what a test printed.
func statement(printed []byte) ([]byte, error) {
	for lines := bufio.NewScanner(bytes.NewReader(printed)); lines.Scan(); {
		if _, text, found := strings.Cut(lines.Text(), marker); found {
			return []byte(text), nil
		}
	}
	return nil, fmt.Errorf("it states no figure: %s", bytes.TrimSpace(printed))
}

// ventFlow is the vent-flow formula against published room states. Control: the
// plane of a room mixed throughout, which is what one would use without layers.
var ventFlow = Figure{
	Name: "vent_flow", Unit: "m", Goal: "signed mean 0.03 m, mean absolute 0.05 m, flow within 12 % in 90 % of rows",
	Measure: func(ctx context.Context) (Result, error) {
		var m struct {
			Signed   float64 `json:"signed_mean_m"`
			Absolute float64 `json:"mean_absolute_m"`
			Share    float64 `json:"flow_within_12_percent"`
			Mixed    float64 `json:"mixed_mean_absolute_m"`
			Rows     int     `json:"rows"`
		}
		passed, err := fromTest(ctx, "./engine/zone", "TestVentFlowOfThePublishedRoomStates", &m)
		if err != nil {
			return Result{}, err
		}
		return Result{
			Ours:    map[string]float64{"signed_mean_m": m.Signed, "mean_absolute_m": m.Absolute, "flow_within_12_percent": m.Share},
			Control: map[string]float64{"mean_absolute_m": m.Mixed},
			Holds:   passed && m.Share >= 0.9,
			How:     fmt.Sprintf("neutral plane and flow of %d published steady rooms (NBSIR 82-2520) from their measured layers; control: the plane of a room mixed throughout at its upper temperature", m.Rows),
		}, nil
	},
}
