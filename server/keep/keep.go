// Package keep is for whoever looks after the store: backup, export and check,
// while the server runs or not.
//
// bbolt lets one process hold the file. A running server therefore opens a door
// in its data folder, a Unix socket that only its own user may use, and the
// commands go through that door when there is one and to the file when not.
package keep

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"log/slog"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"time"

	"lintel/server/desk"
	"lintel/server/store"
)

// door is the socket's name in the data folder.
const door = "keeper.sock"

// Listener serves the door of one store.
type Listener struct {
	server   http.Server
	listener net.Listener
	log      *slog.Logger
}

// Listen opens the door in a data folder whose store this process holds; that
// lock is what makes it right to clear away a door that a killed server left.
func Listen(data string, s *store.Store, d *desk.Desk, log *slog.Logger) (*Listener, error) {
	path := filepath.Join(data, door)
	if err := os.Remove(path); err != nil && !errors.Is(err, os.ErrNotExist) {
		return nil, err
	}
	listener, err := net.Listen("unix", path)
	if err != nil {
		return nil, err
	}
	if err := os.Chmod(path, 0o600); err != nil {
		return nil, errors.Join(err, listener.Close())
	}
	l := &Listener{listener: listener, log: log}
	l.server = http.Server{Handler: l.routes(s, d), ReadHeaderTimeout: 5 * time.Second}
	return l, nil
}

// Serve answers until Close.
func (l *Listener) Serve() {
	if err := l.server.Serve(l.listener); err != nil && !errors.Is(err, http.ErrServerClosed) {
		l.log.Error("the keeper's door failed", "err", err)
	}
}

// Close lets what runs finish for a moment and shuts the door.
func (l *Listener) Close() error {
	patience, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	err := l.server.Shutdown(patience)
	if closed := l.listener.Close(); !errors.Is(closed, net.ErrClosed) {
		err = errors.Join(err, closed)
	}
	return err
}

func (l *Listener) routes(s *store.Store, d *desk.Desk) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /backup", l.stream(func(w io.Writer) error { _, err := s.WriteTo(w); return err }))
	mux.HandleFunc("GET /export.csv", l.stream(func(w io.Writer) error { return exportCSV(s, w) }))
	mux.HandleFunc("GET /export.jsonl", l.stream(func(w io.Writer) error { return exportLines(s, w) }))
	mux.HandleFunc("GET /check", func(w http.ResponseWriter, _ *http.Request) {
		census, err := s.Check()
		reply := checkReply{Census: census}
		if err != nil {
			reply.Wrong = err.Error()
		}
		l.send(w, reply)
	})
	mux.HandleFunc("GET /instructors", func(w http.ResponseWriter, _ *http.Request) { l.send(w, listed(d)) })
	mux.HandleFunc("GET /reset", func(w http.ResponseWriter, r *http.Request) { l.send(w, reset(d, r.URL.Query().Get("call_sign"))) })
	return mux
}

func (l *Listener) send(w http.ResponseWriter, reply any) {
	if err := json.NewEncoder(w).Encode(reply); err != nil {
		l.log.Error("not sent to the keeper", "err", err)
	}
}

type checkReply struct {
	Census store.Census `json:"census"`
	Wrong  string       `json:"wrong,omitempty"`
}

// stream sends what write gives. When that fails half way the connection is
// cut, which the other side sees as an error and never as the end.
func (l *Listener) stream(write func(io.Writer) error) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		if err := write(w); err != nil {
			l.log.Error("not sent to the keeper", "err", err)
			panic(http.ErrAbortHandler)
		}
	}
}

// ask gets a path through the door of a data folder. Where no server answers
// it returns errNoDoor.
func ask(ctx context.Context, data, path string, use func(io.Reader) error) error {
	client := http.Client{Transport: &http.Transport{
		DialContext: func(ctx context.Context, _, _ string) (net.Conn, error) {
			conn, err := new(net.Dialer).DialContext(ctx, "unix", filepath.Join(data, door))
			if err != nil {
				return nil, errors.Join(errNoDoor, err)
			}
			return conn, nil
		},
		DisableKeepAlives: true,
	}}
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, "http://keeper"+path, nil)
	if err != nil {
		return err
	}
	reply, err := client.Do(request)
	if err != nil {
		return err
	}
	defer reply.Body.Close()
	if reply.StatusCode != http.StatusOK {
		return errors.New("the running server answered " + reply.Status)
	}
	return use(reply.Body)
}

var errNoDoor = errors.New("keep: no server runs here")
