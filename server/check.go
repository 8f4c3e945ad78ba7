package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"lintel/content/lint"
	"lintel/server/store"
)

// runCheck lints the content and walks the store, if there is one.
func runCheck(_ context.Context, args []string, s streams) int {
	flags := newFlags("check", s.err)
	data := dataFlag(flags)
	if code, ok := parse(flags, args, 0); !ok {
		return code
	}
	problems := lint.Lint()
	for i := range problems {
		fmt.Fprintln(s.err, problems[i].Error())
	}
	if len(problems) > 0 {
		return 1
	}
	fmt.Fprintln(s.out, "content: no problem found")
	return checkStore(filepath.Join(*data, store.FileName), s)
}

func checkStore(path string, s streams) int {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		fmt.Fprintf(s.out, "store: none at %s yet\n", path)
		return 0
	}
	census, err := store.CheckFile(path)
	if err != nil {
		return failed(err, s.err)
	}
	fmt.Fprintf(s.out, "store: sound, %s\n", count(census))
	return 0
}
