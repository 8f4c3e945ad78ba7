package store

import (
	"fmt"
	"runtime/debug"
)

// tornError is a page so torn that reading it faults.
type tornError struct{ fault any }

func (e *tornError) Error() string { return fmt.Sprintf("store: page: %v", e.fault) }

// unfaulted reads pages of a file that may be torn: bbolt takes its own for granted,
// and what lies in the place of one would end the process. It cannot help where bbolt
// reads on another goroutine, as its own check of all pages does.
func unfaulted(read func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if torn := recover(); torn != nil {
			err = &tornError{torn}
		}
	}()
	return read()
}
