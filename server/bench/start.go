package bench

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"
	"time"

	"lintel/engine"
	"lintel/quiz"
	"lintel/server/store"
)

const (
	startRounds  = 11
	storeEvents  = 80_000 // of 1 kB: a store of about 100 MB
	readyGoalMS  = 200.0
	binaryGoalMB = 20.0
)

// startReady is how long the binary takes from exec to a ready answer, over a
// store of 100 MB. Control: the same binary printing its help, which is what a
// start costs before any work.
var startReady = Figure{
	Name: "start_ready", Unit: "ms", Goal: "200 (100 in the long term)",
	Measure: func(ctx context.Context) (Result, error) {
		self, err := os.Executable()
		if err != nil {
			return Result{}, err
		}
		data, err := os.MkdirTemp("", "lintel-bench-*")
		if err != nil {
			return Result{}, err
		}
		defer os.RemoveAll(data)
		size, err := fillStore(data)
		if err != nil {
			return Result{}, err
		}
		var ready, control []float64
		for range startRounds {
			r, err := timeToReady(ctx, self, data)
			if err != nil {
				return Result{}, err
			}
			began := time.Now()
			if err := exec.CommandContext(ctx, self, "help").Run(); err != nil {
				return Result{}, err
			}
			ready, control = append(ready, r), append(control, since(began))
		}
		return Result{
			Ours: median(ready), Control: median(control), Holds: median(ready) <= readyGoalMS,
			How: fmt.Sprintf("exec to /readyz 200 with a store of %d MB, median of %d; control: the same binary printing its help", size>>20, startRounds),
		}, nil
	},
}

// binaryBytes is the size of this binary.
var binaryBytes = Figure{
	Name: "binary_bytes", Unit: "MB", Goal: "20",
	Measure: func(context.Context) (Result, error) {
		self, err := os.Executable()
		if err != nil {
			return Result{}, err
		}
		info, err := os.Stat(self)
		if err != nil {
			return Result{}, err
		}
		mb := float64(info.Size()) / (1 << 20)
		return Result{Ours: mb, Holds: mb <= binaryGoalMB, How: "size of the running binary, front end embedded; stripped only if built so"}, nil
	},
}

// What a started server says of itself.
var (
	address = regexp.MustCompile(`https?://127\.0\.0\.1:\d+/`)
	setUp   = regexp.MustCompile(`Set-up code, once: (\S+)`)
	closing = regexp.MustCompile(`^Training only`)
)

// running is a server started from this very binary.
type running struct {
	url   string
	setUp string // the one-time code, where nobody has used it yet
	cmd   *exec.Cmd
	temp  string // a folder to remove afterwards, or ""
}

// startSelf serves an empty store of its own on a free port.
func startSelf(ctx context.Context) (*running, error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	data, err := os.MkdirTemp("", "lintel-bench-*")
	if err != nil {
		return nil, err
	}
	server, err := startServer(ctx, self, data)
	if err != nil {
		return nil, errors.Join(err, os.RemoveAll(data))
	}
	server.temp = data
	return server, nil
}

func startServer(ctx context.Context, self, data string, flags ...string) (*running, error) {
	args := append([]string{"serve", "-addr", "127.0.0.1:0", "-data", data}, flags...)
	cmd := exec.CommandContext(ctx, self, args...)
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	r := &running{cmd: cmd}
	for lines := bufio.NewScanner(out); lines.Scan(); {
		if at := address.FindString(lines.Text()); at != "" && r.url == "" {
			r.url = at
		}
		if code := setUp.FindStringSubmatch(lines.Text()); code != nil {
			r.setUp = code[1]
		}
		if closing.MatchString(lines.Text()) && r.url != "" {
			return r, nil
		}
	}
	return nil, errors.Join(errors.New("the server said no address"), cmd.Wait())
}

func (r *running) stop() error {
	err := errors.Join(r.cmd.Process.Signal(syscall.SIGTERM), r.cmd.Wait())
	if r.temp != "" {
		err = errors.Join(err, os.RemoveAll(r.temp))
	}
	return err
}

func timeToReady(ctx context.Context, self, data string) (float64, error) {
	began := time.Now()
	server, err := startServer(ctx, self, data)
	if err != nil {
		return 0, err
	}
	ms, err := waitReady(ctx, server.url+"readyz", began)
	return ms, errors.Join(err, server.stop())
}

func waitReady(ctx context.Context, url string, began time.Time) (float64, error) {
	for time.Since(began) < 10*time.Second && ctx.Err() == nil {
		answer, err := http.Get(url)
		if err != nil {
			time.Sleep(time.Millisecond)
			continue
		}
		answer.Body.Close()
		if answer.StatusCode == http.StatusOK {
			return since(began), nil
		}
	}
	return 0, errors.New("the server was not ready within 10 s")
}

// fillStore writes events until the store holds about 100 MB.
func fillStore(folder string) (int64, error) {
	path := filepath.Join(folder, store.FileName)
	s, err := store.Open(path, store.Options{})
	if err != nil {
		return 0, err
	}
	if err := fill(s); err != nil {
		return 0, errors.Join(err, s.Close())
	}
	if err := s.Close(); err != nil {
		return 0, err
	}
	info, err := os.Stat(path)
	if err != nil {
		return 0, err
	}
	return info.Size(), nil
}

// fill appends events of 1 kB, as many to a batch as a device may send.
func fill(s *store.Store) error {
	const device = "00112233445566778899aabbccddeeff"
	if _, err := s.Register(device, strings.Repeat("5a", 32), "Bench"); err != nil {
		return err
	}
	body := quiz.Raw(`{"text":"` + strings.Repeat("x", 1000) + `"}`)
	for first := uint64(1); first <= storeEvents; first += quiz.MaxBatch {
		batch := make([]quiz.Event, quiz.MaxBatch)
		for i := range batch {
			seq := first + uint64(i)
			batch[i] = quiz.Event{
				V: quiz.EventVersion, ID: fmt.Sprintf("%032x", seq), Device: device, Seq: seq,
				Engine: engine.Version, TClient: 1, Kind: quiz.NoteEvent, Body: body,
			}
		}
		if _, err := s.Append(device, batch); err != nil {
			return err
		}
	}
	return nil
}

func since(began time.Time) float64 { return float64(time.Since(began).Microseconds()) / 1000 }

func median(values []float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	return sorted[len(sorted)/2]
}
