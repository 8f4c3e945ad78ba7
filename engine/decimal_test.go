package engine

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDecimal(t *testing.T) {
	for _, c := range []struct {
		x      float64
		places int
		want   string
	}{
		{0, 3, "0"}, {2, 3, "2"}, {-1.5, 3, "-1.5"}, {0.05, 1, "0.1"}, {0.04, 1, "0"}, {-0.04, 1, "0"}, {549.6, 0, "550"},
		{1.0625, 4, "1.0625"}, {12.003, 3, "12.003"}, {1e9, 3, "1000000000"}, {1e-9, 6, "0"}, {123456789.125, 8, "123456789.125"},
		{1e300, 3, "out of all proportion"}, {math.NaN(), 3, "NaN"}, {math.Inf(-1), 3, "-Inf"},
	} {
		assert.Equal(t, c.want, Decimal(c.x, c.places), "%v", c.x)
	}
}

// It reads what the library reads, to the last bit.
func TestParseDecimal(t *testing.T) {
	for _, text := range []string{"0", "3", "-2", "0.47", "0.65", "12.5", "0.1", "1234567.891", "0.0001", "-0.3"} {
		want, err := strconv.ParseFloat(text, 64)
		assert.NoError(t, err)
		got, ok := ParseDecimal(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "-", ".5", "5.", "1e3", "1.2.3", "+1", "--1", "x", "1234567890123456", "0x1p3", "1_0"} {
		_, ok := ParseDecimal(text)
		assert.False(t, ok, text)
	}
}
