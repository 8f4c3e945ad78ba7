package bench

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"regexp"
	"strings"

	"lintel/pwa"
)

const (
	criticalGoalKB = 60.0
	installGoalKB  = 1200.0
)

// criticalBytes is what must arrive before the first screen can be used: the
// page, and the scripts and styles that it names. Control: the same uncompressed.
var criticalBytes = Figure{
	Name: "critical_bytes", Unit: "kB", Goal: "60",
	Measure: func(context.Context) (Result, error) {
		page, err := fs.ReadFile(pwa.Site(), "index.html")
		if err != nil {
			return Result{}, err
		}
		files := append([]string{"index.html"}, named(string(page))...)
		if len(files) == 1 {
			return Result{}, errors.New("the front end is not built into this binary: run the first command of the README")
		}
		sent, plain, err := weigh(files)
		return Result{
			Ours: sent, Control: plain, Holds: sent <= criticalGoalKB,
			How: fmt.Sprintf("%d files that the first page names, as sent (brotli); control: uncompressed", len(files)),
		}, err
	},
}

// installBytes is the whole app as kept for use offline. Control: uncompressed.
var installBytes = Figure{
	Name: "install_bytes", Unit: "kB", Goal: "1200",
	Measure: func(context.Context) (Result, error) {
		files, err := everyFile()
		if err != nil {
			return Result{}, err
		}
		sent, plain, err := weigh(files)
		return Result{
			Ours: sent, Control: plain, Holds: sent <= installGoalKB,
			How: fmt.Sprintf("%d files of the built app, as sent (brotli); control: uncompressed", len(files)),
		}, err
	},
}

// asset finds the scripts and styles in a page.
var asset = regexp.MustCompile(`(?:src|href)="/(assets/[^"]+\.(?:js|css))"`)

func named(page string) []string {
	var files []string
	for _, found := range asset.FindAllStringSubmatch(page, -1) {
		files = append(files, found[1])
	}
	return files
}

func everyFile() ([]string, error) {
	var files []string
	err := fs.WalkDir(pwa.Site(), ".", func(path string, entry fs.DirEntry, err error) error {
		if err == nil && !entry.IsDir() && !strings.HasSuffix(path, ".br") {
			files = append(files, path)
		}
		return err
	})
	if err == nil && len(files) == 1 {
		err = errors.New("the front end is not built into this binary: run the first command of the README")
	}
	return files, err
}

// weigh adds up files as they are sent and as they are, in kB.
func weigh(files []string) (sent, plain float64, err error) {
	for _, file := range files {
		whole, err := fs.Stat(pwa.Site(), file)
		if err != nil {
			return 0, 0, err
		}
		plain += float64(whole.Size()) / 1000
		if packed, err := fs.Stat(pwa.Site(), file+".br"); err == nil {
			whole = packed
		}
		sent += float64(whole.Size()) / 1000
	}
	return sent, plain, nil
}
