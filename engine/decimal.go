package engine

import (
	"math"
	"strconv"
	"strings"
)

// Decimal spells a number with up to so many places, as a sentence needs it. It
// takes the place of the library's exact spelling, whose tables weigh 15 kB on the
// phone (brotli 11, Go 1.26). Beyond what a whole number can hold it says so.
func Decimal(x float64, places int) string {
	const most = 1e15
	switch {
	case math.IsNaN(x):
		return "NaN"
	case math.IsInf(x, 1):
		return "+Inf"
	case math.IsInf(x, -1):
		return "-Inf"
	case math.Abs(x) >= most:
		return "out of all proportion"
	}
	unit := int64(1)
	for range places {
		unit *= 10
	}
	if math.Abs(x)*float64(unit) >= most {
		return Decimal(x, places-1)
	}
	n := int64(math.Floor(float64(math.Abs(x)*float64(unit)) + 0.5))
	text := strconv.FormatInt(n/unit, 10)
	if rest := n % unit; rest > 0 {
		digits := strconv.FormatInt(rest, 10)
		text += "." + strings.TrimRight(strings.Repeat("0", places-len(digits))+digits, "0")
	}
	if x < 0 && n > 0 {
		text = "-" + text
	}
	return text
}

// ParseDecimal reads a number as people write one: digits, with a point and a
// minus where needed.
func ParseDecimal(text string) (float64, bool) {
	digits, negative := strings.CutPrefix(text, "-")
	wholes, places, pointed := strings.Cut(digits, ".")
	if wholes == "" || pointed && places == "" || len(wholes)+len(places) > 15 {
		return 0, false
	}
	var x float64
	for _, digit := range []byte(wholes + places) {
		if digit < '0' || digit > '9' {
			return 0, false
		}
		x = float64(x*10) + float64(digit-'0')
	}
	unit := 1.0
	for range places {
		unit *= 10
	}
	x /= unit // both are whole and below 2^53: the nearest number there is
	if negative {
		x = -x
	}
	return x, true
}
