package validate

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

var numbers = regexp.MustCompile(`-?\d+(\.\d+)?`)

// assertSameReport compares two reports line by line: the words must agree, and
// each number to one unit of its last digit.
func assertSameReport(t *testing.T, committed, fresh string) {
	t.Helper()
	old, now := strings.Split(committed, "\n"), strings.Split(fresh, "\n")
	if !assert.Len(t, now, len(old), "the report has another number of lines: run with -update and read the diff") {
		return
	}
	shown := 0
	for i := range old {
		if !sameLine(old[i], now[i]) && shown < 10 {
			shown++
			assert.Equal(t, old[i], now[i], "line %d: run with -update and read the diff", i+1)
		}
	}
}

func sameLine(old, now string) bool {
	if old == now {
		return true
	}
	if numbers.ReplaceAllString(old, "#") != numbers.ReplaceAllString(now, "#") {
		return false
	}
	a, b := numbers.FindAllString(old, -1), numbers.FindAllString(now, -1)
	for i := range a {
		x, _ := strconv.ParseFloat(a[i], 64)
		y, _ := strconv.ParseFloat(b[i], 64)
		if math.Abs(x-y) > 1.01*lastDigit(a[i]) {
			return false
		}
	}
	return true
}

// lastDigit is one unit of a spelled number's last digit.
func lastDigit(text string) float64 {
	if _, decimals, found := strings.Cut(text, "."); found {
		return math.Pow(10, -float64(len(decimals)))
	}
	return 1
}

func TestSameLineAllowsRoundingOnly(t *testing.T) {
	assert.True(t, sameLine("| rise | 1.05 | 12 % |", "| rise | 1.06 | 13 % |"))
	assert.False(t, sameLine("| rise | 1.05 |", "| rise | 1.08 |"))
	assert.False(t, sameLine("| rise | holds |", "| rise | fails |"))
	assert.False(t, sameLine("row 12.4/never", "row 12.4/310"))
}
