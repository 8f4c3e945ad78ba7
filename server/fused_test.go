package main

import (
	"bufio"
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The Go specification lets a compiler fuse x*y + z into one rounding, and on
// arm64 it does. A phone's server and a laptop's would then differ in the last
// bit. Explicit float64() around products forbids it (same place); this test
// reads the machine code for arm64 to see that none was missed in what decides
// a fire, a reading or a verdict.
func TestNoFusedMultiplyAddOnArm64(t *testing.T) {
	fused := fusedIn(t, "./engine/sim", "lintel/engine/sim.", "lintel/engine/zone.", "lintel/engine/optics.", "lintel/engine/cue.",
		"lintel/engine/truth.", "lintel/engine/internal/num.")
	for _, line := range fused {
		assert.Fail(t, "fused multiply-add: put float64() around the product", line)
	}
	for _, line := range fusedIn(t, "./content", "lintel/engine/infer.", "lintel/quiz") {
		assert.Fail(t, "fused multiply-add: put float64() around the product", line)
	}
}

// The control: a product that feeds a sum without float64() is fused, and seen.
func TestAFusedMultiplyAddIsSeen(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600))
	}
	write("go.mod", "module planted\n\ngo 1.26\n")
	write("planted.go", "package planted\n\n//go:noinline\nfunc Axpy(a, x, y float64) float64 { return a*x + y }\n")
	write("planted_test.go", "package planted\n\nimport \"testing\"\n\nfunc Test(t *testing.T) { _ = Axpy(1, 2, 3) }\n")
	assert.NotEmpty(t, fusedFrom(t, folder, ".", "planted."))
}

func fusedIn(t *testing.T, pkg string, owners ...string) []string {
	t.Helper()
	return fusedFrom(t, "..", pkg, owners...)
}

// fusedFrom compiles the tests of a package for arm64, which links all that it
// uses, and returns the fused instructions in functions of the given owners.
func fusedFrom(t *testing.T, folder, pkg string, owners ...string) []string {
	t.Helper()
	binary := filepath.Join(t.TempDir(), "arm64.test")
	build := exec.Command("go", "test", "-c", "-o", binary, pkg)
	build.Dir, build.Env = folder, append(os.Environ(), "GOARCH=arm64", "CGO_ENABLED=0")
	out, err := build.CombinedOutput()
	require.NoError(t, err, string(out))
	code, err := exec.Command("go", "tool", "objdump", "-s", "^("+strings.Join(escaped(owners), "|")+")", binary).Output()
	require.NoError(t, err)
	require.NotEmpty(t, code, "nothing of %s was found in the binary", owners)

	var fused []string
	for lines := bufio.NewScanner(bytes.NewReader(code)); lines.Scan(); {
		text := lines.Text()
		if strings.Contains(text, "_test.go") {
			continue // a check's own sums decide nothing
		}
		if strings.Contains(text, "FMADD") || strings.Contains(text, "FMSUB") || strings.Contains(text, "FNMADD") || strings.Contains(text, "FNMSUB") {
			fused = append(fused, strings.Join(strings.Fields(text), " "))
		}
	}
	return fused
}

func escaped(names []string) []string {
	var list []string
	for _, name := range names {
		list = append(list, strings.ReplaceAll(name, ".", `\.`))
	}
	return list
}
