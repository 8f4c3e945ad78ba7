package bench

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTapPaintNeedsTapsAndNoFaults(t *testing.T) {
	assert.True(t, tapReport{P98: 40, Taps: 60}.result().Holds)
	assert.False(t, tapReport{P98: 40, Taps: 0}.result().Holds)
	assert.False(t, tapReport{P98: 51, Taps: 60}.result().Holds)
	assert.False(t, tapReport{P98: 40, Taps: 60, Complaints: []string{"TypeError"}}.result().Holds)
}

func TestAuditHoldsOnlyWithAllPoints(t *testing.T) {
	read := func(text string) Result {
		var m auditReport
		require.NoError(t, json.Unmarshal([]byte(text), &m))
		return m.result()
	}
	assert.True(t, read(`{"ours":{"performance":100,"accessibility":100,"best-practices":100}}`).Holds)
	unjudged := read(`{"ours":{"performance":null,"accessibility":100,"best-practices":100,"unjudged":["speed-index (no screenshots)"]}}`)
	assert.False(t, unjudged.Holds)
	assert.Contains(t, unjudged.How, "no screenshots")
	short := read(`{"ours":{"performance":99,"accessibility":100,"best-practices":100,"failed":["image-alt"]}}`)
	assert.False(t, short.Holds)
	assert.Contains(t, short.How, "image-alt")
	assert.Equal(t, 99.0, short.Ours.(map[string]float64)["performance"])
}
