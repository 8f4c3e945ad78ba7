// Package fieldbook holds the shapes of the field book's text: lessons, the
// glossary, cautions and the words and cut points of the scales. The text is
// YAML beside this package; content's compiler reads it into these types.
//
// Every text names its sources by id (content/sources), or says "common
// practice (no source)" or "from memory, to be confirmed" by the ids
// common_practice, from_memory and chosen_by_us.
package fieldbook
