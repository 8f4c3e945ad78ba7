package score_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/quiz/score"
)

// Two judges and three diagnoses, 200 patients (J. Cohen, Psychological Bulletin
// 70, 1968, table 1, from memory, to be confirmed): the paper prints kappa 0.492
// and, with its own weights, 0.348.
func ExampleKappa_cohen1968() {
	table := [][]float64{{88, 14, 18}, {10, 40, 10}, {2, 6, 12}}
	weights := [][]float64{{0, 1, 3}, {1, 0, 6}, {3, 6, 0}}
	plain, _ := score.Kappa(table, score.Nominal)
	weighted, _ := score.Kappa(table, func(i, j int) float64 { return weights[i][j] })
	fmt.Printf("%.4f %.4f\n", plain, weighted)
	// Output: 0.4915 0.3478
}

// Two radiologists and 85 xeromammograms in four classes (D. G. Altman, "Practical
// statistics for medical research", 1991, table 14.4, from memory, to be confirmed;
// statistics manuals print 0.473, 0.57 linear and 0.67 quadratic).
func ExampleKappa_radiologists() {
	table := [][]float64{{21, 12, 0, 0}, {4, 17, 1, 0}, {3, 9, 15, 2}, {0, 0, 0, 1}}
	for _, weight := range []func(i, j int) float64{score.Nominal, score.Linear, score.Quadratic} {
		kappa, _ := score.Kappa(table, weight)
		fmt.Printf("%.4f ", kappa)
	}
	// Output: 0.4728 0.5684 0.6714
}

// One level for everything leaves nothing to agree upon; perfect agreement is 1.
func TestKappaAtItsEnds(t *testing.T) {
	_, ok := score.Kappa([][]float64{{7, 0}, {0, 0}}, score.Quadratic)
	assert.False(t, ok)
	kappa, ok := score.Kappa([][]float64{{7, 0}, {0, 5}}, score.Quadratic)
	assert.True(t, ok)
	assert.Equal(t, 1.0, kappa)
}

// Forty hits of fifty and five false alarms of fifty: with half a count added to
// each cell the rates are 0.794 and 0.108 (the correction of M. J. Hautus, 1995,
// in the formulas of Stanislaw and Todorov, 1999). Ten of ten and none of ten have
// a finite result too.
func ExampleDetection() {
	d, c, _ := score.Detection(40, 10, 5, 45)
	clean, _, _ := score.Detection(10, 0, 0, 10)
	fmt.Printf("%.4f %.4f %.4f\n", d, c, clean)
	// Output: 2.0589 0.2086 3.3812
}

// Who answers by the toss of a coin tells nothing apart and leans to neither side.
func TestDetectionOfACoin(t *testing.T) {
	d, c, ok := score.Detection(20, 20, 20, 20)
	assert.True(t, ok)
	assert.InDelta(t, 0, d, 1e-12)
	assert.InDelta(t, 0, c, 1e-12)
	_, _, ok = score.Detection(3, 1, 0, 0)
	assert.False(t, ok, "no scene without a signal was met")
}

// A series of ten forecasts (worked by hand from the definition, G. W. Brier, 1950):
// the mean of the squared distances is 0.205.
func ExampleBrier() {
	said := []float64{0.7, 0.9, 0.8, 0.4, 0.2, 1, 0.5, 0.6, 0.1, 0.3}
	came := []bool{true, true, false, false, false, true, true, false, false, true}
	sum := 0.0
	for i := range said {
		sum += score.Brier(said[i], came[i])
	}
	fmt.Printf("%.4f\n", sum/10)
	// Output: 0.2050
}

// Fifteen forecasts in three groups, after the partition of A. H. Murphy ("A new
// vector partition of the probability score", Journal of Applied Meteorology 12,
// 1973; the series worked by hand): said 0.6 five times with three right, 0.9 five
// times with four, and 0.5 five times with one.
func ExampleCalibration() {
	var series []score.Forecast
	for said, right := range map[float64]int{0.5: 1, 0.6: 3, 0.9: 4} {
		for i := range 5 {
			series = append(series, score.Forecast{Said: said, Came: i < right})
		}
	}
	bins, gap := score.Calibration(series)
	for _, b := range bins {
		fmt.Printf("%d said %.2f right %.2f\n", b.N, b.Said, b.Right)
	}
	fmt.Printf("%.4f\n", gap)
	// Output:
	// 5 said 0.50 right 0.20
	// 5 said 0.60 right 0.60
	// 5 said 0.90 right 0.80
	// 0.1333
}

// {a, b, c} and {b, c, d}: two in common of four (the textbook example of the
// index of Jaccard).
func ExampleOverlap() {
	fmt.Println(score.Overlap([]string{"a", "b", "c"}, []string{"b", "c", "d"}), score.Overlap([]int{}, []int{}))
	// Output: 0.5 1
}

// The same scores by a general statistics library.
func TestScoresAgainstAStatisticsLibrary(t *testing.T) {
	file, err := os.Open("../../testdata/scores/statistics.csv")
	require.NoError(t, err)
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 50)
	for _, row := range rows[1:] {
		want, err := strconv.ParseFloat(row[3], 64)
		require.NoError(t, err)
		assert.InDelta(t, want, scoreOf(t, row[1], row[2]), 1e-7, row[0])
	}
}

func scoreOf(t *testing.T, name, input string) float64 {
	t.Helper()
	switch name {
	case "d prime", "criterion":
		n := numbers(input)
		d, c, _ := score.Detection(int(n[0]), int(n[1]), int(n[2]), int(n[3]))
		return map[string]float64{"d prime": d, "criterion": c}[name]
	case "brier":
		sum, pairs := 0.0, strings.Fields(input)
		for _, pair := range pairs {
			said, came, _ := strings.Cut(pair, ":")
			sum += score.Brier(numbers(said)[0], came == "1")
		}
		return sum / float64(len(pairs))
	case "jaccard":
		a, b, _ := strings.Cut(input, "/")
		return score.Overlap(numbers(a), numbers(b))
	}
	var table [][]float64
	for _, row := range strings.Split(input, "/") {
		table = append(table, numbers(row))
	}
	kappa, ok := score.Kappa(table, map[string]func(i, j int) float64{"kappa nominal": score.Nominal, "kappa linear": score.Linear, "kappa quadratic": score.Quadratic}[name])
	require.True(t, ok, name)
	return kappa
}

func numbers(text string) []float64 {
	var list []float64
	for _, word := range strings.Fields(text) {
		x, err := strconv.ParseFloat(word, 64)
		if err != nil {
			panic(err)
		}
		list = append(list, x)
	}
	return list
}
