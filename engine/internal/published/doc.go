// Package published reads the published check values in testdata, for tests.
//
// A file says first where its numbers come from, in lines that all must be
// there and no other may be:
//
//	# source: who printed it, when
//	# where: table, page or file
//	# seen: address, or "from memory", or "derived"
//	# quantity: what the numbers are
//	# unit: of what is checked; "see columns" where they differ
//	# tolerance: 2 % because the source prints two digits
//
// The tolerance begins with a number; "%" makes it relative, anything else is
// the absolute difference in the file's unit. A column named tolerance sets it
// row by row. Then follow a line of column names and the rows, as
// comma-separated values; the first column names the row. A cell may be quoted.
//
// A JSON file carries a "provenance" object instead, with source, where and
// seen; or one in each of its cases, with title, address and text_seen.
//
// A test in this package fails on a file without provenance and on one that no
// test names.
package published
