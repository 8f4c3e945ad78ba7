// Package spreadsheet is how a cell is written that somebody else's words go into.
package spreadsheet

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// starts are the characters by which a spreadsheet takes a cell for a formula, in
// their full width too (OWASP, "CSV Injection"; from memory, to be confirmed).
const starts = "=+-@\t\r\n＝＋－＠"

// Plain keeps a spreadsheet from running a cell as a formula: a leading quote makes
// it text. A number may keep its sign.
func Plain(cell string) string {
	first, _ := utf8.DecodeRuneInString(cell)
	if cell == "" || !strings.ContainsRune(starts, first) {
		return cell
	}
	if _, err := strconv.ParseFloat(cell, 64); err == nil {
		return cell
	}
	return "'" + cell
}
