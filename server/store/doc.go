// Package store keeps devices and their events in one bbolt file behind the
// quiz.Store interface.
//
// Every write goes through one goroutine that commits whatever is waiting as a
// group and answers only after the commit is on the disk: a lone writer waits
// for one commit, a class of a hundred shares it. Measured against bbolt's own
// Batch in bench_test.go.
//
// The file holds these buckets, the last seven since schema 2. All numbers in keys are big-endian, so that a
// device's events lie side by side in order.
//
//	meta     "app", "schema"            what this file is
//	devices  device (16 bytes)          -> deviceRow, JSON
//	events   device (16), seq (8)       -> eventRow, JSON; only ever added to
//	ids      device (16), id (16)       -> seq (8); finds an event sent twice
//	waiting  device (16), seq (8)       -> present; answers not checked yet
//	checks   device (16), seq (8)       -> quiz.Check, JSON
//	instructors, keys, rosters, sets, classes
//	         id                         -> rev (8), JSON
//	lines    class (16), seq (8)        -> session.Entry, JSON; only ever added to
//	deeds    seq (8)                    -> quiz.Deed, JSON; only ever added to
//
// Slices that bbolt hands out live only as long as their transaction: they are
// decoded or copied before it ends.
package store
