// Command fit measures the rules on simulated fires: it burns many random
// buildings, rates what shows, and fits the rules' weights to what was true. It
// writes content/measured/measured.yaml, which `go generate ./content` compiles.
//
//	go run ./content/internal/fit -fires 600 -seed 1 -out content/measured/measured.yaml
//
// Half of the fires (by seed) fit the weights; the other half give the hit rates,
// the covering probability and the thresholds at which a hazard is flagged. Coded
// cases of real fires are never used here.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"time"

	"lintel/content"
	"lintel/engine/infer"
)

func main() {
	fires := flag.Int("fires", 600, "how many fires to burn")
	seed := flag.Uint64("seed", 1, "first seed")
	file := flag.String("moments", "", "file that keeps the moments; read where it exists, else written")
	out := flag.String("out", "", "file to write; none prints a summary only")
	workers := flag.Int("workers", 1, "fires burned at once")
	shipped := flag.Bool("judge", false, "judge the reader as it is shipped on these fires, fit nothing; one line of JSON")
	flag.Parse()
	if *shipped {
		if err := judge(burnAll(*fires, *seed, *workers), *fires); err != nil {
			fmt.Fprintln(os.Stderr, "fit: "+err.Error())
			os.Exit(1)
		}
		return
	}
	if err := run(*fires, *seed, *workers, *file, *out); err != nil {
		fmt.Fprintln(os.Stderr, "fit: "+err.Error())
		os.Exit(1)
	}
}

func run(fires int, seed uint64, workers int, file, out string) error {
	begun := time.Now()
	moments, err := gather(fires, seed, workers, file)
	if err != nil {
		return err
	}
	fmt.Printf("%d moments of %d fires in %s\n", len(moments), fires, time.Since(begun).Round(time.Second))
	set, err := infer.NewSet(content.RuleList(), nil, infer.Priors{Cover: 1})
	if err != nil {
		return err
	}
	data := examplesOf(set, moments)
	model := learn(content.RuleList(), data.fit)
	table := measure(content.RuleList(), model, data, moments)
	shorter, err := calibrate(&table, data)
	if err != nil {
		return err
	}
	table.Priors.How = fmt.Sprintf("%d moments of %d simulated fires, seeds %d to %d, by content/internal/fit; half of the fires fit the weights, the other half gave hit rates, cover and thresholds", len(moments), fires, seed, seed+uint64(fires)-1)
	if err := summary(table, shorter, data); err != nil {
		return err
	}
	if out == "" {
		return nil
	}
	return write(out, table)
}

// gather burns the fires, or reads what an earlier call burned.
func gather(fires int, seed uint64, workers int, file string) ([]moment, error) {
	if file != "" {
		if text, err := os.ReadFile(file); err == nil {
			var moments []moment
			return moments, json.Unmarshal(text, &moments)
		}
	}
	moments := burnAll(fires, seed, workers)
	if file == "" {
		return moments, nil
	}
	text, err := json.Marshal(moments)
	if err != nil {
		return nil, err
	}
	return moments, os.WriteFile(file, text, 0o644)
}
