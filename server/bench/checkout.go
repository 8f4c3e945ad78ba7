package bench

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// script runs one of pwa/bench's node scripts and decodes the JSON line it
// prints. It needs a checkout with its front-end packages installed.
func script(ctx context.Context, into any, name string, args ...string) error {
	path, err := inCheckout(filepath.Join("pwa", "bench", name))
	if err != nil {
		return err
	}
	return printedBy(exec.CommandContext(ctx, "node", append([]string{path}, args...)...), name, into)
}

// printedBy runs a command to its end and decodes the JSON that it prints. Where it
// fails the error holds all it complained of: the reason may stand in any line.
func printedBy(cmd *exec.Cmd, name string, into any) error {
	var out, complaint strings.Builder
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("%s: %w: %s", name, err, strings.TrimSpace(complaint.String()))
	}
	if err := json.Unmarshal([]byte(out.String()), into); err != nil {
		return fmt.Errorf("%s: %w: it printed %q", name, err, out.String())
	}
	return nil
}

// inCheckout finds a file of the project from the working folder upward.
func inCheckout(path string) (string, error) {
	folder, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		full := filepath.Join(folder, path)
		if _, err := os.Stat(full); err == nil {
			return full, nil
		}
		parent := filepath.Dir(folder)
		if parent == folder {
			return "", errors.New(path + " is not here: run bench from a checkout")
		}
		folder = parent
	}
}
