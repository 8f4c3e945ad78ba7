// Package validate holds the fire model against published measurements.
//
// For every series in testdata/validation it builds the scenario of each
// experiment from the published geometry, linings and burners, runs it through
// engine/sim, reads the same gauges and compares: row by row, by bias and
// scatter, and by lines of acceptance. What had to be assumed is a note of the
// series and stands in the report. No constant lives here that could bend a
// result; inputs that were not published are named as such.
//
// The report is committed (see ReportFile) and a test makes it again.
package validate

// ReportFile is where the committed report stands, from this package's folder.
const ReportFile = "testdata/report.md"
