// Command wiregen writes pwa/src/wire.gen.ts: the TypeScript names of every Go
// struct that crosses to the front end, the words of every Go enumeration, and
// where each number of a frame lies. It also writes the layouts by which
// pwa/wasm/wire carries those structs. It reads the source of engine and quiz, so
// that comments come along and nothing is listed by hand.
//
//	go generate ./pwa/wasm/...
package main

//go:generate go run . ../../..

import (
	"log"
	"os"
	"path/filepath"
)

// wirePath is where the result lies in the work tree.
const wirePath = "pwa/src/wire.gen.ts"

// written are the files and what makes them.
var written = map[string]func(root string) (string, error){wirePath: generate, layoutsPath: generateLayouts}

func main() {
	if len(os.Args) != 2 {
		log.Fatal("wiregen: give the root of the work tree")
	}
	root := os.Args[1]
	for path, make := range written {
		text, err := make(root)
		if err != nil {
			log.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(root, path), []byte(text), 0o644); err != nil {
			log.Fatal(err)
		}
	}
}
