package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"lintel/content/lint"
	"lintel/server/commandline"
	"lintel/server/keep"
	"lintel/server/store"
)

// runCheck lints the content and walks the store, if there is one.
func runCheck(ctx context.Context, args []string, s streams) int {
	line := commandline.New("check [-data FOLDER]", s.out, s.err)
	data := dataFlag(line)
	if code, over := line.None(args); over {
		return code
	}
	problems := lint.Lint()
	for i := range problems {
		fmt.Fprintln(s.err, problems[i].Error())
	}
	if len(problems) > 0 {
		return commandline.Failed
	}
	fmt.Fprintln(s.out, "content: no problem found")
	return checkStore(ctx, line, *data, s.out)
}

// checkStore walks the store, whether a server holds it or not.
func checkStore(ctx context.Context, line *commandline.Line, data string, out io.Writer) int {
	if _, err := os.Stat(filepath.Join(data, store.FileName)); errors.Is(err, fs.ErrNotExist) {
		fmt.Fprintf(out, "store: none in %s yet\n", data)
		return commandline.Done
	}
	census, err := keep.Check(ctx, data)
	if err != nil {
		return line.Fail(err)
	}
	fmt.Fprintf(out, "store: sound, %s\n", count(census))
	return commandline.Done
}
