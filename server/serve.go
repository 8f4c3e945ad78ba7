package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"
	"slices"
	"time"

	"lintel/content"
	"lintel/content/wording"
	"lintel/engine"
	"lintel/pwa"
	"lintel/quiz"
	"lintel/quiz/session"
	"lintel/server/commandline"
	"lintel/server/serve"
	"lintel/server/verdict"
)

// runServe serves until ctx ends.
func runServe(ctx context.Context, args []string, out, errOut io.Writer) int {
	line := commandline.New("serve [-addr HOST:PORT] [-data FOLDER] [-tls-cert FILE -tls-key FILE] [-behind-https] [-v]", out, errOut)
	addr := line.String("addr", fromEnv("LINTEL_ADDR", serve.DefaultAddr), "host:port to listen on; :8080 lets phones on the network in (LINTEL_ADDR)")
	data := dataFlag(line)
	cert := line.String("tls-cert", fromEnv("LINTEL_TLS_CERT", ""), "file of an own certificate chain, PEM (LINTEL_TLS_CERT)")
	key := line.String("tls-key", fromEnv("LINTEL_TLS_KEY", ""), "file of its key, PEM (LINTEL_TLS_KEY)")
	proxied := line.Bool("behind-https", false, "a proxy on this machine ends TLS and sets X-Forwarded-Proto")
	verbose := line.Bool("v", false, "log every request")
	if code, over := line.None(args); over {
		return code
	}
	level := slog.LevelInfo
	if *verbose {
		level = slog.LevelDebug
	}
	m, err := serve.Run(serve.Config{
		Addr: *addr, Data: *data,
		Site: pwa.Site(), Engine: engine.Version, Content: content.Version, Validated: engine.FireValidated, Score: scoreInWords(),
		Item: itemWithTruth, Choices: choices(), Says: wording.In,
		TLSCert: *cert, TLSKey: *key, BehindHTTPS: *proxied,
		Log: slog.New(slog.NewJSONHandler(errOut, &slog.HandlerOptions{Level: level})), Now: time.Now,
	})
	if err != nil {
		return line.Fail(err)
	}
	setUp, err := m.SetUpCode()
	if err != nil {
		return line.Fail(errors.Join(err, m.Close()))
	}
	fmt.Fprint(out, serve.Welcome(m.Addr(), *cert != "", setUp, isTerminal(out)))
	select {
	case <-ctx.Done():
	case err = <-m.Failed():
	}
	if err = errors.Join(err, m.Close()); err != nil {
		return line.Fail(err)
	}
	return 0
}

// scoreInWords scores answers, working each scene out once for all who answer it.
func scoreInWords() func(quiz.Answer) (quiz.Verdict, error) {
	score := verdict.Remember(content.Scorer)
	return func(a quiz.Answer) (quiz.Verdict, error) {
		scored, err := score(a)
		wording.Verdict(&scored)
		return scored, err
	}
}

// itemWithTruth works out a scene with every right reply to its asks.
func itemWithTruth(scene quiz.Scene) (quiz.Item, [][]quiz.Reply, error) {
	made, truth, err := content.MakeScene(scene)
	return made, truth.Accept, err
}

// choices are the families as a class's next scene is chosen from them.
func choices() []session.Choice {
	var all []session.Choice
	for _, f := range content.Families() {
		choice := session.Choice{Family: f.ID, Title: f.Words("title")}
		for _, ask := range f.Asks {
			if cue := session.CueOf(&quiz.Ask{Kind: ask.Kind, Cue: ask.Cue}); !slices.Contains(choice.Cues, cue) {
				choice.Cues = append(choice.Cues, cue)
			}
		}
		all = append(all, choice)
	}
	return all
}

// isTerminal reports whether a person is looking at out.
func isTerminal(out io.Writer) bool {
	file, ok := out.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
