// Package trial holds the reader against coded moments of real fires and
// full-scale tests (testdata/cases): how many of those that turned hostile it
// flags, and how many of those that did not.
//
// The cases are coded from public reports by one person, mostly from summaries,
// and were picked by their writers for how they ended: use the rates within each
// group only, never the mix as a base rate. No rule, weight or threshold was
// fitted to them. What the reader does on simulated fires that nothing was fitted to
// is told in the same place, as Judged.
package trial
