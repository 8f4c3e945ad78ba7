// Package pwa is Lintel's web app as the server hands it out: the files that
// Vite built from the TypeScript beside this file, with the engine compiled to
// WebAssembly among them. Text and engine files lie there twice, plain and
// compressed (NAME.br), for the server to choose from.
package pwa

import (
	"embed"
	"io/fs"
)

//go:generate go run ./build

// The folder one level above the built files is embedded, so that a checkout in
// which nothing was built yet still compiles and vets.
//
//go:embed all:site
var site embed.FS

// Site returns the built app with index.html at its root. Where nothing was
// built it returns one page that says how to build.
func Site() fs.FS {
	if built, err := fs.Sub(site, "site/dist"); err == nil && has(built, "index.html") {
		return built
	}
	unbuilt, err := fs.Sub(site, "site/unbuilt")
	if err != nil {
		panic("pwa: the embedded folder site/unbuilt has an invalid name: " + err.Error())
	}
	return unbuilt
}

func has(tree fs.FS, name string) bool {
	_, err := fs.Stat(tree, name)
	return err == nil
}
