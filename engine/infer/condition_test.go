package infer

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestConditionsAreRead(t *testing.T) {
	cases := []struct {
		line    string
		feature int
		value   float64
		want    truth
	}{
		{"velocity >= 3", fVelocity, 3, yes},
		{"velocity >= 3", fVelocity, 2, no},
		{"velocity >= 3", fVelocity, math.NaN(), unknown},
		{"neutral plane < 0.47", fPlane, 0.46, yes},
		{"neutral plane < 0.47", fPlane, 0.47, no},
		{"overall velocity change > 0", fMeanVelocityChange, 0.5, yes},
		{"colour is brown or yellow_grey", fColour, 3, yes},
		{"colour is brown or yellow_grey", fColour, 0, no},
		{"colour is not black", fColour, 0, yes},
		{"churning", fChurning, 1, yes},
		{"not churning", fChurning, 1, no},
		{"not churning", fChurning, math.NaN(), unknown},
		{"fastest is not darkest", fSpeedAndDarknessDisagree, 1, yes},
	}
	for _, c := range cases {
		t.Run(c.line, func(t *testing.T) {
			condition, err := parseCondition(c.line)
			require.NoError(t, err)
			require.Equal(t, c.feature, condition.feature)
			var f facts
			opening := make([]float64, openingFeatures)
			if c.feature < openingFeatures {
				opening[c.feature] = c.value
			} else {
				f.building[c.feature-openingFeatures] = c.value
			}
			assert.Equal(t, c.want, condition.holds(opening, f.building[:]))
		})
	}
}

func TestConditionsThatCannotBeRead(t *testing.T) {
	for _, line := range []string{"", "speed >= 3", "velocity >= fast", "colour is mauve", "velocity is 3", "not velocity", "churning >= 1", "colour"} {
		_, err := parseCondition(line)
		assert.Error(t, err, line)
	}
}

func TestABuildingRuleCannotAskAboutOneOpening(t *testing.T) {
	_, err := NewSet([]Rule{{ID: "a", At: AtBuilding, When: []string{"velocity >= 3"}}}, nil, Priors{})
	assert.ErrorContains(t, err, "judge it at an opening")
}
