package keep_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"io"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz"
	"lintel/server/desk"
	"lintel/server/keep"
	"lintel/server/store"
	"lintel/server/store/storetest"
)

// filled makes a data folder with two devices; the first has a call sign that a
// spreadsheet would run.
func filled(t *testing.T) (data string, s *store.Store) {
	t.Helper()
	data = t.TempDir()
	s, err := store.Open(filepath.Join(data, store.FileName), store.Options{})
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, s.Close()) })
	for n, sign := range map[int]string{1: `=HYPERLINK("x")`, 2: `Truck "2", B shift`} {
		_, err := s.Register(storetest.ID(n), storetest.Secret(n), sign)
		require.NoError(t, err)
		events := storetest.Answers(n, 1, 3)
		events[1].Kind, events[1].Body = quiz.NoteEvent, quiz.Raw(`{"text":"wind backed"}`)
		events[2].Body = quiz.Raw(`{"answer":{"v":1,"engine":"0.1.0","content":"c1","family":"inlet_low","seed":9007199254740991,"replies":[],"took_s":4.25,"confidence":0.7},"verdict":{"score":0.5}}`)
		_, err = s.Append(storetest.ID(n), events)
		require.NoError(t, err)
	}
	class := quiz.Doc{Kind: quiz.ClassDoc, ID: storetest.ID(9), Body: quiz.Raw(`{"title":"Tuesday","token":"its-token","code":"its-code","projector":"its-wall","leads":[{"key_sha256":"its-lead"}]}`)}
	boss := quiz.Doc{Kind: quiz.InstructorDoc, ID: "i", Body: quiz.Raw(`{"instructor":{"id":"i","call_sign":"Chief 1","role":"chief"},"phrase":"$argon2id$kept"}`)}
	key := quiz.Doc{Kind: quiz.KeyDoc, ID: "digest-of-a-key", Body: quiz.Raw(`{}`)}
	require.NoError(t, s.Save(quiz.Deed{By: "console", Did: "made", What: "a class"}, class, boss, key))
	rehearsed := storetest.Answers(1, 4, 4)
	rehearsed[0].Body = quiz.Raw(`{"answer":{"v":1,"engine":"0.1.0","content":"c1","family":"inlet_low","seed":1,"replies":[],"took_s":1},"verdict":{"score":1},"class":{"id":"` + storetest.ID(9) + `","scene":"s1","place":"a","rehearsal":true}}`)
	_, _, err = s.Commit(storetest.ID(1), rehearsed, []quiz.Line{{Class: storetest.ID(9), Event: 4, Body: quiz.Raw(`{"kind":"committed"}`)}})
	require.NoError(t, err)
	require.NoError(t, s.SetCheck(storetest.ID(2), 3, quiz.Check{V: 1, State: quiz.CheckDiffers, Verdict: &quiz.Verdict{Score: 0.25}}))
	return data, s
}

// both runs a test against a running server's door and against the file.
func both(t *testing.T, test func(t *testing.T, data string)) {
	t.Run("running", func(t *testing.T) {
		data, s := filled(t)
		door, err := keep.Listen(data, s, desk.New(s, time.Now, desk.DefaultCost), slog.New(slog.NewTextHandler(io.Discard, nil)))
		require.NoError(t, err)
		done := make(chan struct{})
		go func() { door.Serve(); close(done) }()
		t.Cleanup(func() { assert.NoError(t, door.Close()); <-done })
		test(t, data)
	})
	t.Run("stopped", func(t *testing.T) {
		data, s := filled(t)
		require.NoError(t, s.Close())
		test(t, data)
	})
	t.Run("killed", func(t *testing.T) {
		data, s := filled(t)
		require.NoError(t, s.Close())
		// A killed server leaves its door behind, with nobody at it.
		require.NoError(t, os.WriteFile(filepath.Join(data, "keeper.sock"), nil, 0o600))
		test(t, data)
	})
}

func TestBackupAndRestore(t *testing.T) {
	both(t, func(t *testing.T, data string) {
		to := filepath.Join(t.TempDir(), "copy.db")
		swept, census, err := keep.Backup(context.Background(), data, to)
		assert.Empty(t, swept)
		require.NoError(t, err)
		assert.Equal(t, store.Census{Devices: 2, Events: 7, Answers: 5, Checked: 1, Waiting: 4, Docs: 3, Classes: 1, Lines: 1, Deeds: 1}, census)

		fresh := t.TempDir()
		kept, restored, err := keep.Restore(to, fresh, time.Now())
		require.NoError(t, err)
		assert.Empty(t, kept)
		assert.Equal(t, census, restored)
		var first, second bytes.Buffer
		require.NoError(t, keep.Export(context.Background(), data, true, &first))
		require.NoError(t, keep.Export(context.Background(), fresh, true, &second))
		assert.Equal(t, first.String(), second.String(), "every record is the same")
	})
}

func TestCheck(t *testing.T) {
	both(t, func(t *testing.T, data string) {
		census, err := keep.Check(context.Background(), data)
		require.NoError(t, err)
		assert.EqualValues(t, 7, census.Events)
	})
	_, err := keep.Check(context.Background(), t.TempDir())
	require.ErrorContains(t, err, "does not exist")
}

func TestExportForASpreadsheet(t *testing.T) {
	both(t, func(t *testing.T, data string) {
		var out bytes.Buffer
		require.NoError(t, keep.Export(context.Background(), data, false, &out))
		reader := csv.NewReader(&out)
		reader.FieldsPerRecord = -1
		rows, err := reader.ReadAll()
		require.NoError(t, err)
		require.Len(t, rows, 2+6, "what was rehearsed is nobody's record")
		assert.Contains(t, rows[0][0], "TRAINING, NOT AN INCIDENT")
		column := map[string]int{}
		for i, name := range rows[1] {
			column[name] = i
		}
		assert.Equal(t, `'=HYPERLINK("x")`, rows[2][column["call_sign"]], "no cell is run as a formula")
		assert.Equal(t, `Truck "2", B shift`, rows[5][column["call_sign"]])
		last := rows[7]
		assert.Equal(t, "inlet_low", last[column["family"]])
		assert.Equal(t, "9007199254740991", last[column["seed"]], "not a digit is lost")
		assert.Equal(t, "0.2500", last[column["score"]], "the server's score where it has one")
		assert.Equal(t, "differs", last[column["scored_by"]])
		assert.Equal(t, "0.5000", rows[4][column["score"]])
		assert.Equal(t, "waiting", rows[4][column["scored_by"]])
		assert.Equal(t, "2026-09-21T14:13:20Z", rows[2][column["device_time_utc"]])
		for _, row := range rows[2:] {
			assert.Len(t, row, len(rows[1]))
		}
	})
}

func TestExportAsLines(t *testing.T) {
	both(t, func(t *testing.T, data string) {
		var out bytes.Buffer
		require.NoError(t, keep.Export(context.Background(), data, true, &out))
		lines := strings.Split(strings.TrimSpace(out.String()), "\n")
		require.Len(t, lines, 1+2+7+4)
		assert.Contains(t, lines[0], "TRAINING, NOT AN INCIDENT")
		for _, line := range lines {
			assert.True(t, json.Valid([]byte(line)), line)
			assert.NotContains(t, line, "argon2")
			assert.NotContains(t, line, "digest-of-a-key")
			assert.NotContains(t, line, "its-", "no class can be joined, watched or led by it")
			assert.NotContains(t, line, "secret", "not even its digest leaves the server")
		}
		assert.Contains(t, out.String(), `"text":"wind backed"`)
		assert.Contains(t, out.String(), `{"instructor":{"id":"i","call_sign":"Chief 1"`)
		assert.Contains(t, out.String(), `{"title":"Tuesday"}`)
		assert.Contains(t, out.String(), `{"line":{"class":"`+storetest.ID(9)+`","seq":1,"body":{"kind":"committed"}}}`)
		assert.Contains(t, out.String(), `"did":"made"`)
	})
}

func TestTheDoorIsItsOwnersOnly(t *testing.T) {
	data, s := filled(t)
	door, err := keep.Listen(data, s, desk.New(s, time.Now, desk.DefaultCost), slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	info, err := os.Stat(filepath.Join(data, "keeper.sock"))
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm())
	require.NoError(t, door.Close())
	_, err = os.Stat(filepath.Join(data, "keeper.sock"))
	assert.ErrorIs(t, err, os.ErrNotExist)
}
