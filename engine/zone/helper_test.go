package zone_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/require"

	"lintel/engine"
	"lintel/engine/zone"
)

// materials reads the fuels and linings as written, so that these tests do not
// wait for the compiled content.
func materials(t testing.TB) engine.Materials {
	t.Helper()
	var m engine.Materials
	list(t, "fuels", &m.Fuels)
	list(t, "linings", &m.Linings)
	return m
}

func list(t testing.TB, folder string, into any) {
	t.Helper()
	files, err := filepath.Glob("../../content/" + folder + "/*.yaml")
	require.NoError(t, err)
	require.Len(t, files, 1)
	text, err := os.ReadFile(files[0])
	require.NoError(t, err)
	var tree any
	require.NoError(t, yaml.Unmarshal(text, &tree))
	plain, err := json.Marshal(tree)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(plain, into))
}

func build(t testing.TB, sc engine.Scenario) *zone.Model {
	t.Helper()
	require.NoError(t, sc.Validate())
	m, err := zone.New(sc, materials(t))
	require.NoError(t, err)
	return m
}

func ptr(x float64) *float64 { return &x }
