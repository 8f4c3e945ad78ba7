package quiz

// Attempt is what a record keeps of an answer: enough for every score, and no
// more, so that a year of them crosses to the engine in a moment. Parts are the
// verdict's own.
type Attempt struct {
	TClient    int64    `json:"t_client"` // the event's, ms since 1970 UTC
	Family     string   `json:"family"`
	Kind       ItemKind `json:"kind"`
	Parts      []Part   `json:"parts"`
	Confidence *float64 `json:"confidence,omitempty"`
	Brier      *float64 `json:"brier,omitempty"`
	Overlap    *float64 `json:"overlap,omitempty"`
	TookS      float64  `json:"took_s"`
}

// Skill is one thing that practice makes better.
type Skill string

// The skills. The first four are the ordinal cues.
const (
	SkillVolume   Skill = "volume"
	SkillVelocity Skill = "velocity"
	SkillDensity  Skill = "density"
	SkillDarkness Skill = "darkness"
	SkillFlow     Skill = "flow"
	SkillPlane    Skill = "neutral_plane"
	SkillNearest  Skill = "nearest"
	SkillStage    Skill = "stage"
	SkillRegime   Skill = "regime"
	SkillChange   Skill = "change"
	SkillTrend    Skill = "trend"
	SkillPair     Skill = "pair"
	SkillReport   Skill = "report"
)

// Skills lists every skill.
var Skills = []Skill{SkillVolume, SkillVelocity, SkillDensity, SkillDarkness, SkillFlow, SkillPlane, SkillNearest, SkillStage, SkillRegime, SkillChange, SkillTrend, SkillPair, SkillReport}

// Progress is what a record adds up to. Skills come weakest first and hold only
// what was practised.
type Progress struct {
	V           int             `json:"v"`
	N           int             `json:"n"` // answers
	Skills      []SkillProgress `json:"skills"`
	Calls       CallProgress    `json:"calls"`
	Reports     ReportProgress  `json:"reports"`
	Confusions  []Confusion     `json:"confusions"` // what was taken for what, the most often first
	Families    []FamilyRating  `json:"families"`   // those met, by id
	MedianTookS *float64        `json:"median_took_s"`
}

// SkillProgress is one skill. Kappa stands from 50 ratings on. Ability is in
// logits: 0 is someone who gets an item of usual difficulty half right.
type SkillProgress struct {
	Skill   Skill    `json:"skill"`
	N       int      `json:"n"`      // asked
	Given   int      `json:"given"`  // answered with more than "cannot tell"
	Error   float64  `json:"error"`  // mean, 0 to 1
	Recent  float64  `json:"recent"` // mean error of the last twenty
	Right   float64  `json:"right"`  // share
	Bias    *float64 `json:"bias"`   // mean signed steps, positive reads too heavy; of a plane the mean share of the height; null where there is no more and less
	Kappa   *float64 `json:"kappa"`  // quadratic weighted, null below 50 ratings or where not ordinal
	Ability float64  `json:"ability"`
}

// CallProgress is how answers given with a confidence came out.
type CallProgress struct {
	N           int       `json:"n"`
	Overlap     *float64  `json:"overlap"` // mean, of calls of stage and regime
	Brier       *float64  `json:"brier"`   // mean
	Calibration []Bin     `json:"calibration"`
	Gap         *float64  `json:"gap"`   // expected calibration error: mean distance of confidence and share right, weighted by n
	Kinds       []KindSum `json:"kinds"` // the same by kind of item, those that were met
}

// KindSum is the answers to one kind of item that were given with a confidence.
type KindSum struct {
	Kind  ItemKind `json:"kind"`
	N     int      `json:"n"`
	Said  float64  `json:"said"`  // mean confidence
	Right float64  `json:"right"` // share right
}

// Bin is the calls made with a confidence from Low up to High.
type Bin struct {
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	N     int     `json:"n"`
	Said  float64 `json:"said"`  // mean confidence
	Right float64 `json:"right"` // share right
}

// ReportProgress is how reports came out. DPrime and Criterion carry the
// log-linear correction and are null until both kinds of scene were met.
type ReportProgress struct {
	N                 int      `json:"n"`
	Hits              int      `json:"hits"`
	Misses            int      `json:"misses"`
	FalseAlarms       int      `json:"false_alarms"`
	CorrectRejections int      `json:"correct_rejections"`
	DPrime            *float64 `json:"d_prime"`
	Criterion         *float64 `json:"criterion"`
	LeadS             *float64 `json:"lead_s"` // median of the hits that an event followed
}

// Confusion is a pair that was taken for one another, and how often. Contrast is
// ready to be given to a which_of_two family.
type Confusion struct {
	Contrast Contrast `json:"contrast"`
	N        int      `json:"n"`
}

// FamilyRating is a family's difficulty in logits, as this record shows it.
type FamilyRating struct {
	Family     string  `json:"family"`
	N          int     `json:"n"`
	Difficulty float64 `json:"difficulty"`
}
