package ability_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"

	"lintel/engine/curve"
	"lintel/quiz/ability"
)

// The steps U(n) with a = 1 and b = 0.05 (Pelánek 2016, section 3.3, the values he
// recommends): 0.8, 0.67, 0.5, 0.29 and 0.17 after 5, 10, 20, 50 and 100 answers.
func ExampleStep() {
	for _, n := range []int{0, 5, 10, 20, 50, 100} {
		fmt.Printf("%.4f ", ability.Step(n))
	}
	// Output: 1.0000 0.8000 0.6667 0.5000 0.2857 0.1667
}

// A first right answer of someone rated 0 to an item rated 0 moves both by half a
// logit (U(0) = 1 times 1 - 0.5); with four options to guess from, the expected
// credit is 0.625 (Pelánek 2016, section 2.3: 1/k + (1 - 1/k)·P).
func ExampleMeet() {
	person, item := ability.Rating{}, ability.Rating{}
	ability.Meet(&person, &item, 1, 0)
	fmt.Println(person.Logits, item.Logits, ability.Expected(0, 0, 0.25))
	// Output: 0.5 -0.5 0.625
}

// People of known ability meet items of known difficulty: the order comes out.
func TestKnownAbilitiesAreFound(t *testing.T) {
	draw := rand.New(rand.NewPCG(4, 9))
	people, items := make([]ability.Rating, 80), make([]ability.Rating, 40)
	trueAbility, trueDifficulty := make([]float64, len(people)), make([]float64, len(items))
	for i := range trueAbility {
		trueAbility[i] = draw.NormFloat64()
	}
	for i := range trueDifficulty {
		trueDifficulty[i] = draw.NormFloat64()
	}
	const guess = 0.25
	for range 80 * 120 {
		p, i := draw.IntN(len(people)), draw.IntN(len(items))
		credit := 0.0
		if draw.Float64() < guess+(1-guess)*curve.Logistic(trueAbility[p]-trueDifficulty[i]) {
			credit = 1
		}
		ability.Meet(&people[p], &items[i], credit, guess)
	}
	assert.Greater(t, rankCorrelation(trueAbility, logits(people)), 0.85)
	assert.Greater(t, rankCorrelation(trueDifficulty, logits(items)), 0.9)
}

func logits(list []ability.Rating) []float64 {
	out := make([]float64, len(list))
	for i, r := range list {
		out[i] = r.Logits
	}
	return out
}

// rankCorrelation is Spearman's.
func rankCorrelation(a, b []float64) float64 {
	x, y := ranks(a), ranks(b)
	sum := 0.0
	for i := range x {
		sum += math.Pow(x[i]-y[i], 2)
	}
	n := float64(len(x))
	return 1 - 6*sum/(n*(n*n-1))
}

func ranks(list []float64) []float64 {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	sort.Slice(order, func(i, j int) bool { return list[order[i]] < list[order[j]] })
	out := make([]float64, len(list))
	for rank, i := range order {
		out[i] = float64(rank)
	}
	return out
}
