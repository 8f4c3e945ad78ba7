// Command probe makes items of families for many seeds and tells how often that
// works, how long it takes and how the answers spread. It helps to set a family's
// ranges.
//
//	go run ./content/internal/probe -n 20 one-door two-way-door
package main

import (
	"flag"
	"fmt"
	"sort"
	"strings"
	"time"

	"lintel/content"
	"lintel/quiz"
	"lintel/quiz/item"
)

func main() {
	n := flag.Int("n", 20, "seeds of each family")
	first := flag.Uint64("seed", 0, "first seed")
	flag.Parse()
	for _, f := range content.Families() {
		if flag.NArg() == 0 || wanted(f.ID) {
			probe(&f, *first, *n)
		}
	}
}

func wanted(id string) bool {
	for _, part := range flag.Args() {
		if strings.Contains(id, part) {
			return true
		}
	}
	return false
}

func probe(f *item.Family, first uint64, n int) {
	failed, slowest := 0, time.Duration(0)
	spread := map[string]int{}
	start := time.Now()
	for k := range uint64(n) {
		began := time.Now()
		_, truth, err := content.Make(f.ID, first+k)
		slowest = max(slowest, time.Since(began))
		if err != nil {
			failed++
			continue
		}
		for _, accept := range truth.Accept {
			spread[spell(accept)]++
		}
	}
	defer pairs(f, first, n)
	fmt.Printf("%-26s %-13s failed %2d of %d, mean %4d ms, most %5d ms  %s\n", f.ID, f.Kind, failed, n,
		time.Since(start).Milliseconds()/int64(n), slowest.Milliseconds(), listed(spread))
}

func listed(spread map[string]int) string {
	var lines []string
	for answer, count := range spread {
		lines = append(lines, fmt.Sprintf("%s %d", answer, count))
	}
	sort.Strings(lines)
	return strings.Join(lines, ", ")
}

func spell(accept []quiz.Reply) string {
	r := accept[0]
	name, _, _ := strings.Cut(r.Ask, "@")
	switch {
	case r.Level != nil:
		return fmt.Sprint(name, "=", *r.Level)
	case r.Plane != nil:
		return fmt.Sprintf("%s=%.1f", name, *r.Plane)
	case r.AtS != nil && r.EventS != nil:
		return "comes, then the event"
	case r.AtS != nil:
		return "comes"
	case r.Quiet:
		return "never comes"
	case len(accept) > 1 && r.Trend != "":
		return "starved"
	}
	return string(r.Stage) + string(r.Regime) + string(r.Change) + string(r.Flow) + r.Opening + string(r.Trend) + string(r.Pick)
}

// pairs tells the same of each contrast of a family.
func pairs(f *item.Family, first uint64, n int) {
	for i := range f.Pairs {
		failed, start := 0, time.Now()
		for k := range uint64(n) {
			if _, _, err := content.MakeScene(quiz.Scene{Family: f.ID, Seed: first + k, Contrast: &f.Pairs[i]}); err != nil {
				failed++
			}
		}
		fmt.Printf("    %v failed %d of %d, mean %d ms\n", f.Pairs[i], failed, n, time.Since(start).Milliseconds()/int64(n))
	}
}
