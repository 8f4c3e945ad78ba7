// Package wasmbuild compiles Go for the phone, the same way for the app, the
// tests and the bench.
package wasmbuild

import (
	"context"
	"fmt"
	"os"
	"os/exec"
)

// hot are the packages whose speed a person feels: the fire, what it rests on and
// how it looks. They are compiled as usual. Everything else is compiled without
// inlining, which saves the download 49 KB of 774 (brotli 11; Go 1.26). Lists are
// sorted by sort.SliceStable, one for all: slices.Sort is compiled anew for every
// type.
var hot = []string{
	"lintel/engine/zone", "lintel/engine/internal/num", "lintel/engine/sim",
	"lintel/engine/optics", "lintel/engine/cue", "math",
}

// Compile builds one package of the work tree at root to path, without symbols,
// paths and build id: the file is then smaller, and the same wherever it is
// built.
func Compile(ctx context.Context, root, pkg, path string) error {
	args := []string{"build", "-trimpath", "-ldflags=-s -w -buildid=", "-gcflags=all=-l"}
	for _, name := range hot {
		args = append(args, "-gcflags="+name+"=")
	}
	build := exec.CommandContext(ctx, "go", append(args, "-o", path, pkg)...)
	build.Dir = root
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if output, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("build %s for the phone: %w: %s", pkg, err, output)
	}
	return joinSegmentsOf(path)
}
