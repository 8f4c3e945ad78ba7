package keep

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"path/filepath"
	"time"

	"lintel/engine"
	"lintel/server/store"
)

// Backup writes a whole, checked copy of the store in data to a new file. Halves that
// killed backups left in its folder are removed before, so that none keeps its disk full;
// swept are their names.
func Backup(ctx context.Context, data, to string) (swept []string, census store.Census, err error) {
	swept, err = store.Sweep(filepath.Dir(to))
	if err != nil {
		return swept, census, engine.Bad(filepath.Dir(to), "holds what a stopped backup left, and it cannot be removed ("+err.Error()+")", "remove the files there whose names begin with .half-")
	}
	census, err = store.SaveBackup(to, func(w io.Writer) error {
		return eitherWay(ctx, data, "/backup", copying(w), func(path string) error {
			_, err := store.CopyFile(path, w)
			return err
		})
	})
	return swept, census, err
}

// Restore puts a backup in place of the store in data. No server may be running
// on it. What was there is kept under the name returned.
func Restore(from, data string, now time.Time) (kept string, census store.Census, err error) {
	return store.Restore(from, filepath.Join(data, store.FileName), now)
}

// Compact writes the store in data anew, so that no byte of what was erased is left
// in it. No server may be running on it; one does the same when it starts.
func Compact(data string) (before, after int64, err error) {
	return store.Compact(filepath.Join(data, store.FileName))
}

// Export writes every record, as CSV for a spreadsheet or as JSON lines.
func Export(ctx context.Context, data string, lines bool, w io.Writer) error {
	path, export := "/export.csv", exportCSV
	if lines {
		path, export = "/export.jsonl", exportLines
	}
	return eitherWay(ctx, data, path, copying(w), func(file string) error {
		s, err := store.OpenToRead(file)
		if err != nil {
			return err
		}
		return errors.Join(export(s, w), s.Close())
	})
}

// Check walks the store and counts what it holds.
func Check(ctx context.Context, data string) (census store.Census, err error) {
	read := func(body io.Reader) error {
		var reply checkReply
		if err := json.NewDecoder(body).Decode(&reply); err != nil {
			return err
		}
		census = reply.Census
		if reply.Wrong != "" {
			return errors.New(reply.Wrong)
		}
		return nil
	}
	err = eitherWay(ctx, data, "/check", read, func(path string) (err error) {
		census, err = store.CheckFile(path)
		return err
	})
	return census, err
}

// eitherWay asks a running server, or opens the file when none runs.
func eitherWay(ctx context.Context, data, path string, use func(io.Reader) error, file func(string) error) error {
	if err := ask(ctx, data, path, use); !errors.Is(err, errNoDoor) {
		return err
	}
	return file(filepath.Join(data, store.FileName))
}

func copying(w io.Writer) func(io.Reader) error {
	return func(r io.Reader) error {
		_, err := io.Copy(w, r)
		return err
	}
}
