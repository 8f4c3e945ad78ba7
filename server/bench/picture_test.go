package bench

import (
	"context"
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPictureReportShowsTheBestLiar(t *testing.T) {
	var m pictureReport
	require.NoError(t, json.Unmarshal([]byte(`{"seed":3,"scenes":52,"lowest":0.97,
		"correlations":{"speed":{"pearson":0.99,"spearman":0.97}},
		"sweeps":{"ordered":1,"within":0.94,"pairs":12},"liars":{"one speed":0.1,"inverted":-1},"holds":false}`), &m))
	r := m.result()
	assert.Equal(t, map[string]float64{"lowest": 0.97, "speed": 0.97}, r.Ours)
	assert.Equal(t, 0.1, r.Control)
	assert.False(t, r.Holds)
	assert.Contains(t, r.How, "52 scenes")
}

func TestFrameScriptHoldsOnlyWithAllOfIt(t *testing.T) {
	const rest = `"control_ms":1,"four":{"median":2,"pictures":300},"hidden":{"drawn":0,"after":50},"coarser_s":0.9}`
	for name, c := range map[string]struct {
		text  string
		holds bool
	}{
		"all of it":                  {`{"p95_ms":3,"page_ms":1,` + rest, true},
		"never coarser":              {`{"p95_ms":3,"page_ms":1,"hidden":{"drawn":0,"after":50},"coarser_s":null}`, false},
		"draws when hidden":          {`{"p95_ms":3,"page_ms":1,"hidden":{"drawn":9,"after":50},"coarser_s":0.9}`, false},
		"never draws again":          {`{"p95_ms":3,"page_ms":1,"hidden":{"drawn":0,"after":0},"coarser_s":0.9}`, false},
		"too slow":                   {`{"p95_ms":4.1,"page_ms":1,` + rest, false},
		"too slow on the page":       {`{"p95_ms":3,"page_ms":4.1,` + rest, false},
		"not measured on the page":   {`{"p95_ms":3,` + rest, false},
		"not measured on its thread": {`{"page_ms":1,` + rest, false},
	} {
		var m frameReport
		require.NoError(t, json.Unmarshal([]byte(c.text), &m), name)
		assert.Equal(t, c.holds, m.result().Holds, name)
	}
}

func TestPictureHeapPrintsItsLeakAsControl(t *testing.T) {
	var m heapReport
	require.NoError(t, json.Unmarshal([]byte(`{"minutes":3,"early_kb":9000,"late_kb":9100,"grew":0.011,"leak_grew":0.4,"holds":true}`), &m))
	r := m.result()
	assert.Equal(t, 0.011, r.Ours)
	assert.Equal(t, 0.4, r.Control)
	assert.True(t, r.Holds)
	assert.Contains(t, r.How, "in 3 minutes")
}

func TestThePicturesLongRunWaitsForALongerSittingThanTheLast(t *testing.T) {
	ctx, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer cancel()
	reached, fault := runHeap(ctx, 12)
	assert.NoError(t, fault)
	assert.Equal(t, uint64(12), reached)
}

// A run that is given its whole time watches the whole of it: rounded down it never
// came to the thirtieth minute.
func TestAPicturesSittingIsAsLongAsItsTime(t *testing.T) {
	whole := pictureHeap.Long.Slice
	assert.Equal(t, heapLongMinutes, sitting(whole-10*time.Millisecond))
	assert.Equal(t, 8, sitting(10*time.Minute-time.Second))
	assert.Less(t, sitting(time.Minute), 1)
}
