// Code generated from the committed validation report by its test with -update. DO NOT EDIT.

package engine

// FireValidated says whether the fire model holds every line of acceptance of its
// validation report. It is the one flag behind every "model not yet validated"
// label.
const FireValidated = false

// FireLinesHeld of FireLines lines of acceptance hold in that report.
const (
	FireLinesHeld = 20
	FireLines     = 26
)
