package zone_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lintel/content"
	"lintel/engine"
	"lintel/engine/zone"
)

func materials(testing.TB) engine.Materials { return content.Materials() }

func build(t testing.TB, sc engine.Scenario) *zone.Model {
	t.Helper()
	require.NoError(t, sc.Validate())
	m, err := zone.New(sc, materials(t))
	require.NoError(t, err)
	return m
}

func ptr(x float64) *float64 { return &x }
