package published

import (
	"errors"
	"strings"
)

// split cuts one line of comma-separated values. A cell in double quotes may
// hold commas; a doubled quote inside it is a quote. No cell spans lines.
func split(line string) ([]string, error) {
	var cells []string
	for {
		cell, rest, more, err := next(line)
		if err != nil {
			return nil, err
		}
		cells = append(cells, cell)
		if !more {
			return cells, nil
		}
		line = rest
	}
}

// next takes the first cell off a line.
func next(line string) (cell, rest string, more bool, err error) {
	trimmed := strings.TrimLeft(line, " ")
	if !strings.HasPrefix(trimmed, `"`) {
		cell, rest, more = strings.Cut(line, ",")
		return strings.TrimSpace(cell), rest, more, nil
	}
	var text strings.Builder
	for i := 1; i < len(trimmed); i++ {
		switch {
		case trimmed[i] != '"':
			text.WriteByte(trimmed[i])
		case i+1 < len(trimmed) && trimmed[i+1] == '"':
			text.WriteByte('"')
			i++
		default:
			_, rest, more = strings.Cut(trimmed[i+1:], ",")
			return text.String(), rest, more, nil
		}
	}
	return "", "", false, errors.New("has a quote that is never closed")
}
