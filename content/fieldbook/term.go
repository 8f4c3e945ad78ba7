package fieldbook

// Glossary is content/glossary/glossary.yaml.
type Glossary struct {
	Terms []Term `json:"terms"`
}

// Term is one word of the trade. Used says where the word is used or defined.
type Term struct {
	ID      string   `json:"id"`
	Term    string   `json:"term"`
	Aliases []string `json:"aliases,omitempty"`
	Meaning string   `json:"meaning"`
	Used    string   `json:"used"`
	See     []string `json:"see,omitempty"` // ids of related terms
	Sources []string `json:"sources"`
}
