package fieldbook

import "lintel/quiz"

// Lesson teaches one idea: content/lessons/<id>.yaml, one lesson a file.
type Lesson struct {
	ID       string   `json:"id"`
	Order    int      `json:"order"` // where it stands in the book, from 1
	Title    string   `json:"title"`
	Idea     string   `json:"idea"` // the one thing to remember
	Body     []string `json:"body"` // short paragraphs
	Look     []string `json:"look"` // what to look at
	Misleads []string `json:"misleads"`
	Mistake  string   `json:"mistake"`            // the common one
	Shutting bool     `json:"shutting,omitempty"` // it speaks of shutting an opening
	Terms    []string `json:"terms,omitempty"`    // glossary ids
	Sources  []string `json:"sources"`
	Try      Try      `json:"try"`
}

// Try is where a lesson sends its reader: a kind of drill item, or the prop.
type Try struct {
	Kind quiz.ItemKind `json:"kind,omitempty"`
	Prop bool          `json:"prop,omitempty"`
	Do   string        `json:"do"` // what to try, in one sentence
}
