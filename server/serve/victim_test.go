package serve_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lintel/server/serve"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// beVictim is a server in a process of its own that prints where it listens and
// runs until it is killed.
func beVictim(data string) {
	m, err := serve.Run(config(data))
	if err != nil {
		fmt.Println("error", err)
		os.Exit(1)
	}
	fmt.Println(m.Addr())
	select {}
}

// victim starts this test binary as a server.
func victim(t *testing.T, data string) (*exec.Cmd, string) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "LINTEL_TEST_VICTIM="+data)
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	cmd.Stderr = os.Stderr
	require.NoError(t, cmd.Start())
	t.Cleanup(func() { _ = cmd.Process.Kill() })
	line := make([]byte, 256)
	n, err := out.Read(line)
	require.NoError(t, err)
	text := strings.TrimSpace(string(line[:n]))
	require.NotContains(t, text, "error")
	return cmd, "http://" + text
}

// tally is what each device was told is durable.
type tally struct {
	mu    sync.Mutex
	acked map[int]uint64
}

func (a *tally) raise(n int, seq uint64) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.acked[n] = max(a.acked[n], seq)
}

func (a *tally) total() (sum uint64) {
	a.mu.Lock()
	defer a.mu.Unlock()
	for _, seq := range a.acked {
		sum += seq
	}
	return sum
}

// load sends device n's history from after what was acknowledged until the
// server is gone.
func load(url string, n int, from uint64, told *tally) {
	client := http.Client{Timeout: 5 * time.Second}
	for seq := from + 1; ; {
		last := seq + uint64(2*n) // batches of three to seventeen
		text, _ := json.Marshal(map[string]any{"v": 1, "events": storetest.Answers(n, seq, last)})
		request, _ := http.NewRequest("POST", url+"/api/v1/events", bytes.NewReader(text))
		request.Header.Set("Content-Type", "application/json")
		request.Header.Set(as(n)[0], as(n)[1])
		reply, err := client.Do(request)
		if err != nil {
			return
		}
		var body struct{ Acked uint64 }
		err = json.NewDecoder(reply.Body).Decode(&body)
		_, _ = io.Copy(io.Discard, reply.Body)
		reply.Body.Close()
		switch {
		case err != nil:
			return
		case reply.StatusCode == 429:
			time.Sleep(20 * time.Millisecond)
		case reply.StatusCode != 200:
			return
		default:
			told.raise(n, body.Acked)
			seq = body.Acked + 1
		}
	}
}

// killRounds is how often the server is killed; LINTEL_KILLS asks for more.
func killRounds(t *testing.T) int {
	if text := os.Getenv("LINTEL_KILLS"); text != "" {
		n, err := strconv.Atoi(text)
		require.NoError(t, err)
		return n
	}
	if raced {
		return 5 // the detector is for the other tests: it cannot see into a killed process
	}
	return 20
}

// What was acknowledged is there after the process was killed in the middle of
// writing, and the file is whole. (A killed process, not a power cut: that
// needs a machine to pull the plug of.)
func TestKilledServerLosesNothingAcknowledged(t *testing.T) {
	const devices = 8
	data := t.TempDir()
	told := &tally{acked: map[int]uint64{}}
	var slowest time.Duration
	for round := range killRounds(t) {
		began := time.Now()
		cmd, url := victim(t, data)
		waitReady(t, url)
		slowest = max(slowest, time.Since(began))
		if round == 0 {
			for n := 1; n <= devices; n++ {
				text := fmt.Sprintf(`{"v":1,"device":"%s","secret":"%s","call_sign":"Engine %d"}`, storetest.ID(n), storetest.Secret(n), n)
				reply, err := http.Post(url+"/api/v1/devices", "application/json", strings.NewReader(text))
				require.NoError(t, err)
				reply.Body.Close()
				require.Equal(t, 201, reply.StatusCode)
			}
		}
		var all sync.WaitGroup
		for n := 1; n <= devices; n++ {
			from := told.acked[n]
			all.Go(func() { load(url, n, from, told) })
		}
		// Under way for certain, and then somewhere else in a commit each time.
		before := told.total()
		require.Eventually(t, func() bool { return told.total() > before }, 10*time.Second, time.Millisecond)
		time.Sleep(time.Duration(round*7919%40) * time.Millisecond)
		require.NoError(t, cmd.Process.Signal(syscall.SIGKILL))
		_ = cmd.Wait()
		all.Wait()
		requireToldIsHeld(t, filepath.Join(data, store.FileName), told)
	}
	// Read by the command bench.
	t.Logf(`FIGURE {"kills":%d,"acked":%d,"slowest_ready_ms":%d}`, killRounds(t), told.total(), slowest.Milliseconds())
}

func requireToldIsHeld(t *testing.T, path string, told *tally) {
	t.Helper()
	_, err := store.CheckFile(path)
	require.NoError(t, err)
	s, err := store.OpenToRead(path)
	require.NoError(t, err)
	defer s.Close()
	for n, seq := range told.acked {
		records := storetest.All(t, s, storetest.ID(n))
		require.GreaterOrEqual(t, len(records), int(seq), "device %d", n)
		for i, r := range records {
			require.Equal(t, storetest.Answer(n, uint64(i)+1), r.Event)
		}
	}
}

func waitReady(t *testing.T, url string) {
	t.Helper()
	for range 2000 {
		if reply, err := http.Get(url + "/readyz"); err == nil {
			reply.Body.Close()
			if reply.StatusCode == 200 {
				return
			}
		}
		time.Sleep(time.Millisecond)
	}
	t.Fatal("the server was never ready")
}
