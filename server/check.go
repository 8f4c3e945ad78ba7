package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"lintel/content/lint"
	"lintel/server/keep"
	"lintel/server/store"
)

// runCheck lints the content and walks the store, if there is one.
func runCheck(ctx context.Context, args []string, s streams) int {
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
	return checkStore(ctx, *data, s)
}

// checkStore walks the store, whether a server holds it or not.
func checkStore(ctx context.Context, data string, s streams) int {
	if _, err := os.Stat(filepath.Join(data, store.FileName)); errors.Is(err, fs.ErrNotExist) {
		fmt.Fprintf(s.out, "store: none in %s yet\n", data)
		return 0
	}
	census, err := keep.Check(ctx, data)
	if err != nil {
		return failed(err, s.err)
	}
	fmt.Fprintf(s.out, "store: sound, %s\n", count(census))
	return 0
}
