// Command build makes the web app: it installs the front end's packages, compiles
// the engine to WebAssembly, and has Vite put everything into site/dist. It runs
// from go generate, in the folder of package pwa.
package main

import (
	"context"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"lintel/pwa/wasm/wasmbuild"
)

func main() {
	log.SetFlags(0)
	log.SetPrefix("pwa/build: ")
	steps := []func() error{installPackages, compileEngine, copyStarter, buildSite}
	for _, step := range steps {
		if err := step(); err != nil {
			log.Fatal(err)
		}
	}
}

// installPackages brings exactly what package-lock.json names.
func installPackages() error { return run("npm", "ci", "--no-audit", "--no-fund") }

// compileEngine builds the engine as a phone gets it.
func compileEngine() error {
	path, err := filepath.Abs(filepath.Join("src", "worker", "lintel.wasm"))
	if err != nil {
		return err
	}
	return wasmbuild.Compile(context.Background(), "..", "./pwa/wasm", path)
}

// copyStarter takes the start-up script that belongs to this Go toolchain.
func copyStarter() error {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join("src", "worker", "wasm_exec.js"), script, 0o644)
}

func buildSite() error { return run("npm", "run", "--silent", "build") }

func run(name string, args ...string) error {
	cmd := exec.Command(name, args...)
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	return cmd.Run()
}
