package bench

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
)

const (
	killRounds    = 200
	killBatch     = 50
	killGoalMS    = 200.0
	killedPackage = "./server/serve"
	killedTest    = "TestKilledServerLosesNothingAcknowledged"
)

// killed is what the test that kills the server states.
type killed struct {
	Kills   int     `json:"kills"`
	Acked   uint64  `json:"acked"`
	ReadyMS float64 `json:"slowest_ready_ms"`
}

// kill9 kills the real server under load again and again. No control: an
// acknowledged answer is there or it is not.
var kill9 = Figure{
	Name: "kill9", Unit: "answers lost", Goal: "0 of 10,000 kills in the long run (200 here); ready again within 200 ms", Slow: true,
	Measure: func(ctx context.Context) (Result, error) {
		k, err := kill(ctx, killRounds)
		if err != nil {
			return Result{}, err
		}
		return Result{
			Ours: map[string]float64{"lost": 0, "slowest_ready_ms": k.ReadyMS}, Holds: k.ReadyMS <= killGoalMS,
			How: fmt.Sprintf("%d kills of the real server by signal 9 while 8 devices send; %d events acknowledged, every one there; the slowest start counts the process itself", k.Kills, k.Acked),
		}, nil
	},
	Long: &Long{
		Goal: 10_000, Unit: "kills",
		Stamp: stampOf("server/store/writer.go", "server/store/event.go", "server/store/open.go", "server/httpapi/event.go", "go.mod"),
		Run: func(ctx context.Context, from uint64) (uint64, error) {
			for ctx.Err() == nil {
				// A batch is finished even when the time is up: half of one counts for nothing.
				if _, err := kill(context.WithoutCancel(ctx), killBatch); err != nil {
					return from, err
				}
				from += killBatch
			}
			return from, nil
		},
	},
}

func kill(ctx context.Context, rounds int) (k killed, err error) {
	mod, err := inCheckout("go.mod")
	if err != nil {
		return k, err
	}
	cmd := exec.CommandContext(ctx, "go", "test", "-count=1", "-v", "-timeout", "1h", "-run", "^"+killedTest+"$", killedPackage)
	cmd.Dir, cmd.Env = filepath.Dir(mod), append(os.Environ(), "LINTEL_KILLS="+strconv.Itoa(rounds))
	out, failed := cmd.CombinedOutput()
	if failed != nil {
		return k, fmt.Errorf("%s: %s", killedTest, bytes.TrimSpace(out))
	}
	text, err := statement(out)
	if err != nil {
		return k, err
	}
	return k, json.Unmarshal(text, &k)
}
