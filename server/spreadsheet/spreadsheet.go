// Package spreadsheet is how a cell is written that somebody else's words go into.
package spreadsheet

import (
	"regexp"
	"strconv"
)

// starts are the characters by which a spreadsheet takes a cell for a formula, in
// their full width too (OWASP, "CSV Injection"; from memory, to be confirmed).
const starts = "=+\\-@\t\r\n＝＋－＠"

// formula finds where a formula may begin: at the beginning of a cell, and inside it
// behind whatever another spreadsheet parts cells or rows by, with the quotation
// marks that it takes for the beginning of a quoted cell and the spaces that it
// passes over. Where the comma is a decimal sign, as in most Spanish ones, cells are
// parted by semicolons, and a comma is a character like any other.
var (
	atStart = regexp.MustCompile(`^[` + starts + `]`)
	inside  = regexp.MustCompile(`[;,|\t\r\n]["' ]*[` + starts + `]`)
)

// Plain keeps a spreadsheet from running a cell as a formula, whatever it parts
// cells by: a quote before it makes it text. A number may keep its sign.
func Plain(cell string) string {
	if _, err := strconv.ParseFloat(cell, 64); err == nil {
		return cell
	}
	cell = inside.ReplaceAllStringFunc(cell, quoted)
	if atStart.MatchString(cell) {
		return "'" + cell
	}
	return cell
}

// quoted puts a quote before the last character.
func quoted(found string) string {
	letters := []rune(found)
	last := len(letters) - 1
	return string(letters[:last]) + "'" + string(letters[last:])
}
