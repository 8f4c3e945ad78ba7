// Command compile turns the content that people write (YAML under content/) into
// what programs read: Go literals in content/*_gen.go, so that no YAML reader
// travels to the phone, and JSON under pwa/src/generated for the field book's
// text. It is run by `go generate ./content`, with content as its folder.
package main

import (
	"fmt"
	"os"
)

func main() {
	if err := run("."); err != nil {
		fmt.Fprintln(os.Stderr, "content: "+err.Error())
		os.Exit(1)
	}
}

func run(content string) error {
	all, err := compile(content)
	if err != nil {
		return err
	}
	return all.save(content)
}
