package store

import "path/filepath"

// Free is what the disk of the store has left, where that is known.
func (s *Store) Free() (bytes uint64, known bool) { return freeBytes(filepath.Dir(s.db.Path())) }
