package report

// words is every word that a report adds to what the content says.
type words struct {
	caution, report, rehearsal                          string
	opened, ended, running, people, scenes, scene       string
	version, perCue, repeat, each                       string
	commits, truth, right, unsure, sure                 string
	doubted, apart, none, or, against                   string
	tooHeavy, tooLight, mixed                           string
	late, sheets, removed, quiet, flow, plane           string
	stage, regime, opening, change, trend, pick, moment string
	up, allOut, allIn, lower, alike, higher, point      string
	level, levels, heavy, light                         string
	shows, came, nothing                                string
}

// ofLanguage are the words by language.
var ofLanguage = map[string]*words{
	"en": {
		caution:   "TRAINING, NOT AN INCIDENT. A training record from Lintel; it is no proof of fitness for duty.",
		report:    "Class report",
		rehearsal: "A rehearsal: no part of this is anyone's record.",
		opened:    "Opened", ended: "Ended", running: "still running", people: "People", scenes: "Scenes", scene: "Scene",
		version: "Engine and content", perCue: "Cue by cue, furthest off first", repeat: "To take again", each: "Each person",
		commits: "Readings", truth: "It was", right: "right", unsure: "cannot tell", sure: "sure",
		doubted: "The instructor disagrees with this key; it is kept out of every score.",
		apart:   "Furthest apart", none: "Nothing stood out.", or: " or ", against: " against ",
		tooHeavy: "read too heavy", tooLight: "read too light", mixed: "missed",
		late: "after the compare", sheets: "from paper", removed: "removed", quiet: "nothing reported",
		flow: "Flow", plane: "Neutral plane", stage: "Stage", regime: "Regime", opening: "Nearest to the seat",
		change: "Change", trend: "Trend", pick: "Which of two", moment: "Moment to report",
		up: "of the way up", allOut: "none in the opening: all of it goes out", allIn: "none in the opening: air goes in over all of it",
		lower: "lower", alike: "much the same", higher: "higher", point: ".",
		level: "level", levels: "levels", heavy: "too heavy on average", light: "too light on average",
		shows: "began to show at", came: "the event came at", nothing: "there was nothing to report",
	},
	"es": {
		caution:   "ENTRENAMIENTO, NO UN INCIDENTE. Un registro de entrenamiento de Lintel; no prueba aptitud para el servicio.",
		report:    "Informe de la clase",
		rehearsal: "Un ensayo: nada de esto queda en el registro de nadie.",
		opened:    "Abierta", ended: "Terminada", running: "aún en marcha", people: "Personas", scenes: "Escenas", scene: "Escena",
		version: "Motor y contenido", perCue: "Señal por señal, primero la más desviada", repeat: "Para repetir", each: "Cada persona",
		commits: "Lecturas", truth: "Era", right: "acertadas", unsure: "no se distingue", sure: "seguridad",
		doubted: "El instructor no está de acuerdo con esta clave; queda fuera de toda puntuación.",
		apart:   "Más alejadas", none: "Nada destacó.", or: " o ", against: " frente a ",
		tooHeavy: "lectura demasiado fuerte", tooLight: "lectura demasiado leve", mixed: "con fallos",
		late: "después de comparar", sheets: "de papel", removed: "quitada", quiet: "sin aviso",
		flow: "Flujo", plane: "Plano neutro", stage: "Etapa", regime: "Régimen", opening: "La más cercana al foco",
		change: "Cambio", trend: "Tendencia", pick: "Cuál de las dos", moment: "Momento de avisar",
		up: "de la altura", allOut: "no hay en la abertura: todo sale", allIn: "no hay en la abertura: entra aire por toda ella",
		lower: "más bajo", alike: "casi igual", higher: "más alto", point: ",",
		level: "nivel", levels: "niveles", heavy: "de más en promedio", light: "de menos en promedio",
		shows: "empezó a verse a los", came: "el suceso llegó a los", nothing: "no había nada de que avisar",
	},
}

// Languages are those that a report can be written in.
var Languages = []string{"en", "es"}
