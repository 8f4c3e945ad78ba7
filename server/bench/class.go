package bench

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"lintel/server/bench/crowd"
	"lintel/server/store"
)

// Chosen by us: a class is told of a change at most ten times a second, so acts
// are spaced wider than that; five broadcasts make a sample, and a pair is one
// sample of ours and two of the control.
const (
	spacing     = 150 * time.Millisecond
	perSample   = 5
	classPairs  = 11
	classGoal   = 1.25
	atOnce      = 64 // joins and dials under way
	classScene  = "one-door"
	patience    = 60 * time.Second // for a frame to reach everyone
	lookSeconds = 600
)

func scenes() []map[string]any {
	return []map[string]any{
		{"family": classScene, "seed": 1, "look_s": lookSeconds, "note": ""},
		{"family": classScene, "seed": 2, "look_s": lookSeconds, "note": ""},
	}
}

// hall is a server with one class in it and the phones that take part.
type hall struct {
	server *running
	class  *crowd.Class
	phones []*crowd.Phone
	round  crowd.Round
	seq    uint64
	scenes []string // ids, in the class's order
	looked int      // scenes begun, to take turns
}

// openHall starts a server whose store knows so many devices, opens a class and
// lets all of them join and connect. What flags say, serve is given.
func openHall(ctx context.Context, phones int, flags ...string) (h *hall, err error) {
	self, err := os.Executable()
	if err != nil {
		return nil, err
	}
	data, err := os.MkdirTemp("", "lintel-bench-*")
	if err != nil {
		return nil, err
	}
	h = &hall{}
	defer func() {
		if err != nil && h.server == nil {
			err = errors.Join(err, os.RemoveAll(data))
		} else if err != nil {
			err = errors.Join(err, h.close())
		}
	}()
	for n := range phones {
		h.phones = append(h.phones, crowd.Device(n))
	}
	if err := register(data, h.phones); err != nil {
		return h, err
	}
	if h.server, err = startServer(ctx, self, data, flags...); err != nil {
		return h, err
	}
	h.server.temp = data
	site, err := crowd.NewSite(h.server.url)
	if err != nil {
		return h, err
	}
	if h.class, err = site.Open(ctx, h.server.setUp, scenes()); err != nil {
		return h, err
	}
	return h, crowd.Each(h.phones, atOnce, func(_ int, p *crowd.Phone) error { return p.Join(ctx, h.class) })
}

// register fills a store before a server opens it: a server takes newcomers
// more slowly than a bench has time for.
func register(data string, phones []*crowd.Phone) error {
	s, err := store.Open(filepath.Join(data, store.FileName), store.Options{})
	if err != nil {
		return err
	}
	err = crowd.Each(phones, atOnce, func(_ int, p *crowd.Phone) error {
		_, err := s.Register(p.Device, p.Secret, "Engine")
		return err
	})
	return errors.Join(err, s.Close())
}

func (h *hall) connect(ctx context.Context) error {
	return crowd.Each(h.phones, atOnce, func(_ int, p *crowd.Phone) error { return p.Connect(ctx, h.class, h.round.Arrived) })
}

// act does something that every phone must hear of and returns how long each waited.
func (h *hall) act(ctx context.Context, who []*crowd.Phone, act map[string]any) ([]time.Duration, error) {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	time.Sleep(spacing)
	h.round.Begin(who, h.seq+1)
	seq, err := h.class.Do(ctx, act)
	if err != nil {
		return nil, err
	}
	h.seq = seq
	return h.round.Wait(ctx)
}

// start begins the class, with everyone in it.
func (h *hall) start(ctx context.Context) error {
	report, err := h.class.Report(ctx)
	if err != nil {
		return err
	}
	for i := range report.Scenes {
		h.scenes = append(h.scenes, report.Scenes[i].ID)
	}
	h.seq, err = h.class.Do(ctx, map[string]any{"kind": "started"})
	return err
}

// sample is the 99th percentile of a few broadcasts, in ms.
func (h *hall) sample(ctx context.Context, who []*crowd.Phone) (float64, error) {
	return pooled(func() ([]time.Duration, error) {
		return h.act(ctx, who, map[string]any{"kind": "look_extended", "add_s": 1})
	})
}

func pooled(broadcast func() ([]time.Duration, error)) (float64, error) {
	var all []time.Duration
	for range perSample {
		took, err := broadcast()
		if err != nil {
			return 0, err
		}
		all = append(all, took...)
	}
	slices.Sort(all)
	return crowd.Percentile(all, 0.99), nil
}

func (h *hall) close() error { return h.server.stop() }

// bareHub is the control: gorilla on net/http and nothing else.
type bareHub struct {
	cmd    *exec.Cmd
	folder string
	site   *crowd.Site
	phones []*crowd.Phone
	round  crowd.Round
	seq    uint64
}

func startBareHub(ctx context.Context, flags ...string) (b *bareHub, err error) {
	mod, err := inCheckout("go.mod")
	if err != nil {
		return nil, err
	}
	folder, err := os.MkdirTemp("", "lintel-bench-*")
	if err != nil {
		return nil, err
	}
	b = &bareHub{folder: folder}
	program := filepath.Join(folder, "barehub")
	build := exec.CommandContext(ctx, "go", "build", "-o", program, "./server/bench/barehub")
	build.Dir = filepath.Dir(mod)
	if out, err := build.CombinedOutput(); err != nil {
		return nil, errors.Join(fmt.Errorf("barehub: %s", bytes.TrimSpace(out)), os.RemoveAll(folder))
	}
	b.cmd = exec.CommandContext(ctx, program, append(flags, "-db", filepath.Join(folder, "bare.db"))...)
	out, err := b.cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := b.cmd.Start(); err != nil {
		return nil, errors.Join(err, os.RemoveAll(folder))
	}
	lines := bufio.NewScanner(out)
	if !lines.Scan() {
		return nil, errors.Join(errors.New("barehub said no address"), b.cmd.Wait(), os.RemoveAll(folder))
	}
	b.site, err = crowd.NewSite(strings.TrimPrefix(lines.Text(), "at "))
	return b, err
}

func (b *bareHub) connect(ctx context.Context, phones int) error {
	for n := range phones {
		b.phones = append(b.phones, crowd.Device(n))
	}
	return crowd.Each(b.phones, atOnce, func(_ int, p *crowd.Phone) error { return p.Dial(ctx, b.site.URL+"live", nil, b.round.Arrived) })
}

// sample is the same as a hall's, with frames of as many bytes.
func (b *bareHub) sample(ctx context.Context, bytes int) (float64, error) {
	return pooled(func() ([]time.Duration, error) {
		ctx, cancel := context.WithTimeout(ctx, patience)
		defer cancel()
		time.Sleep(spacing)
		b.seq++
		b.round.Begin(b.phones, b.seq)
		if err := b.site.Call(ctx, "POST", fmt.Sprintf("send?seq=%d&bytes=%d", b.seq, bytes), "", nil, nil); err != nil {
			return nil, err
		}
		return b.round.Wait(ctx)
	})
}

func (b *bareHub) close() error {
	err := b.cmd.Process.Kill()
	_ = b.cmd.Wait()
	return errors.Join(err, os.RemoveAll(b.folder))
}
