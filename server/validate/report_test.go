package validate

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lintel/content"
)

var update = flag.Bool("update", false, "write the committed report anew")

// The rows are testdata's "validation/*.csv".
const rowFiles = "validation/*.csv"

// The committed report is what the fire model makes of the published rows now. A
// change of the physics fails here until the report is made anew, and then shows
// as a diff. Numbers in it are rounded, so rounding alone does not show.
func TestReportIsUpToDate(t *testing.T) {
	if testing.Short() {
		t.Skip("runs some minutes' worth of every published fire")
	}
	report, err := Run(content.Library())
	require.NoError(t, err)
	fresh := report.Markdown()
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(ReportFile), 0o755))
		require.NoError(t, os.WriteFile(ReportFile, []byte(fresh), 0o644))
		require.NoError(t, os.WriteFile(flagFile, flagSource(fresh), 0o644))
	}
	committed, err := os.ReadFile(ReportFile)
	require.NoError(t, err)
	assertSameReport(t, string(committed), fresh)
	assert.Less(t, report.Took.Seconds(), 600.0, "the whole comparison is to fit into a minute of one core, and others may use it too")
	t.Logf("%.0f s of fire in %.1f s; every line of acceptance holds: %v", report.fireS(), report.Took.Seconds(), report.Validated())
	t.Logf("layer_temp %+v", report.LayerTemp())
	t.Logf("layer_depth %+v", report.LayerDepth())
	t.Logf("small_box %+v", report.SmallBox())
}
