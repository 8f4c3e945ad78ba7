// Package commandline reads what stands behind a command's name, says in one line
// what is wrong there or went wrong later, and knows the exit code that goes with it.
package commandline

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"lintel/engine"
)

// Exit codes of every command.
const (
	Done    = 0
	Failed  = 1
	AtFault = 2 // what was given is at fault, and nothing was written
)

// Line is the command line of one command: its flags, and how it is used.
type Line struct {
	*flag.FlagSet
	usage       string
	out, errOut io.Writer
}

// New makes a line for a command whose usage begins with its name, as in
// "backup [-data FOLDER] FILE".
func New(usage string, out, errOut io.Writer) *Line {
	name, _, _ := strings.Cut(usage, " ")
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	return &Line{flags, usage, out, Plain(errOut)}
}

// Words takes the flags, before, between or behind the other words, and returns
// those. Where the command ends here, after help or a mistake, over is true and
// code is what to exit with.
func (l *Line) Words(args []string) (words []string, code int, over bool) {
	for {
		switch err := l.Parse(args); {
		case errors.Is(err, flag.ErrHelp):
			l.help()
			return nil, Done, true
		case err != nil:
			return nil, l.Wrong(err.Error()), true
		}
		if l.NArg() == 0 {
			return words, Done, false
		}
		words, args = append(words, l.Arg(0)), l.Args()[1:]
	}
}

// None is Words for a command that takes flags only.
func (l *Line) None(args []string) (code int, over bool) {
	words, code, over := l.Words(args)
	if !over && len(words) > 0 {
		return l.Wrong(fmt.Sprintf("it takes no %q", words[0])), true
	}
	return code, over
}

// One is Words for a command that takes one thing, which what names.
func (l *Line) One(args []string, what string) (word string, code int, over bool) {
	words, code, over := l.Words(args)
	switch {
	case over:
		return "", code, true
	case len(words) != 1:
		return "", l.Wrong("give " + what), true
	}
	return words[0], Done, false
}

func (l *Line) help() {
	fmt.Fprintln(l.out, l.usage)
	l.SetOutput(l.out)
	l.PrintDefaults()
}

// Wrong says what is wrong with the line and how it should be.
func (l *Line) Wrong(what string) int {
	fmt.Fprintf(l.errOut, "lintel %s: %s: usage: %s\n", l.Name(), what, l.usage)
	return AtFault
}

// Fail says what went wrong: AtFault where the person can mend it, else Failed.
func (l *Line) Fail(err error) int { return l.FailAt("", err) }

// FailAt is Fail with the place where it went wrong, for an error that does not say.
func (l *Line) FailAt(where string, err error) int {
	if where != "" {
		where += ": "
	}
	fmt.Fprintf(l.errOut, "lintel %s: %s%s\n", l.Name(), where, inOneLine(err))
	var problem *engine.Problem
	if errors.As(err, &problem) {
		return AtFault
	}
	return Failed
}

// inOneLine undoes what errors.Join does, a line for each of its parts.
func inOneLine(err error) string { return strings.ReplaceAll(err.Error(), "\n", "; ") }
