package main

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/engine"
)

const root = "../../.."

func TestWhatIsWrittenIsFresh(t *testing.T) {
	for path, make := range written {
		want, err := make(root)
		require.NoError(t, err)
		got, err := os.ReadFile(filepath.Join(root, path))
		require.NoError(t, err)
		assert.True(t, want == string(got), "%s is stale: run go generate ./pwa/wasm/...", path)
	}
}

// The lengths that the phone reads by must be those that the engine writes.
func TestFrameLengthsAgree(t *testing.T) {
	text, err := generate(root)
	require.NoError(t, err)
	for name, part := range map[string]struct {
		length int
		of     any
	}{
		"FRAME_HEADER": {engine.FrameHeaderLength, engine.FrameHeader{}},
		"COMPARTMENT":  {engine.CompartmentFrameLength, engine.CompartmentFrame{}},
		"OPENING":      {engine.OpeningFrameLength, engine.OpeningFrame{}},
	} {
		fields := reflect.TypeOf(part.of)
		assert.Equal(t, part.length, fields.NumField(), name)
		_, body, found := strings.Cut(text, "export const "+name+" = {")
		require.True(t, found, name)
		body, _, _ = strings.Cut(body, "}")
		at := -1
		for i := range fields.NumField() {
			next := strings.Index(body, "  "+fields.Field(i).Name+": ")
			assert.Greater(t, next, at, "%s.%s", name, fields.Field(i).Name)
			at = next
		}
	}
}

func TestOptionalAndNullAreToldApart(t *testing.T) {
	text, err := generate(root)
	require.NoError(t, err)
	for _, line := range []string{
		"  neutral_plane?: number\n",         // a reading's: absent when not seen
		"  neutral_plane: number | null\n",   // a finding's: always there
		"  stage: Record<Stage, number>\n",   // a map by word
		"  hrr_kw?: [number, number][]\n",    // pairs
		"  interface_m: (number | null)[]\n", // a list with gaps
		"export type Side = 'A' | 'B' | 'C' | 'D'\n",
	} {
		assert.Contains(t, text, line)
	}
}

func TestTheFireModelsStandingIsWritten(t *testing.T) {
	text, err := generate(root)
	require.NoError(t, err)
	assert.Contains(t, text, fmt.Sprintf("{ validated: %t, held: %d, lines: %d }", engine.FireValidated, engine.FireLinesHeld, engine.FireLines))
}

// A frame gives stages and colours as places in these lists.
func TestWordsKeepTheEnginesOrder(t *testing.T) {
	text, err := generate(root)
	require.NoError(t, err)
	assert.Contains(t, text, "STAGE_WORDS: readonly Stage[] = ['"+quoted(engine.Stages)+"']\n")
	assert.Contains(t, text, "COLOUR_WORDS: readonly Colour[] = ['"+quoted(engine.Colours)+"']\n")
}

func quoted[T ~string](words []T) string {
	var list []string
	for _, word := range words {
		list = append(list, string(word))
	}
	return strings.Join(list, "', '")
}
