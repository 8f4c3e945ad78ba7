package fieldbook

// CautionBook is content/cautions/cautions.yaml.
type CautionBook struct {
	Cautions []Caution `json:"cautions"`
}

// Caution is one sentence that must stand in the places it names. Always means
// it stands there the whole time, not only on first sight.
type Caution struct {
	ID      string   `json:"id"`
	Text    string   `json:"text"`
	Where   []Place  `json:"where"`
	Always  bool     `json:"always,omitempty"`
	Sources []string `json:"sources"`
}

// Place is a part of the product in which a caution stands.
type Place string

// The places. All means every screen's caution list and every export.
const (
	All       Place = "all"
	Home      Place = "home"
	SizeUp    Place = "size_up"
	Prop      Place = "prop"
	PropBurn  Place = "prop_burn" // a live burn at a real prop
	Drill     Place = "drill"
	FieldBook Place = "field_book"
	Log       Place = "log"
	Export    Place = "export"
	Reading   Place = "reading" // beside any reading the engine gives
)

// Places lists every place.
var Places = []Place{All, Home, SizeUp, Prop, PropBurn, Drill, FieldBook, Log, Export, Reading}
