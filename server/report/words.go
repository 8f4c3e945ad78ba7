package report

// words is every word that a report adds to what the content says.
type words struct {
	caution, report, rehearsal                          string
	opened, ended, running, people, scenes, scene       string
	version, perCue, repeat, each                       string
	commits, truth, right, unsure, sure                 string
	doubted, apart, none, or, against                   string
	tooHeavy, tooLight, mixed                           string
	late, sheets, removed, off, quiet, flow, plane      string
	stage, regime, opening, change, trend, pick, moment string
}

// ofLanguage are the words by language.
var ofLanguage = map[string]*words{
	"en": {
		caution:   "TRAINING, NOT AN INCIDENT. A training record from Lintel; it is no proof of fitness for duty.",
		report:    "Class report",
		rehearsal: "A rehearsal: no part of this is anyone's record.",
		opened:    "Opened", ended: "Ended", running: "still running", people: "People", scenes: "Scenes", scene: "Scene",
		version: "Engine and content", perCue: "Agreement with the truth, by cue", repeat: "To take again", each: "Each person",
		commits: "Readings", truth: "True", right: "right", unsure: "cannot tell", sure: "sure",
		doubted: "The instructor disagrees with this key; it is kept out of every score.",
		apart:   "Furthest apart", none: "Nothing stood out.", or: " or ", against: " against ",
		tooHeavy: "read too heavy", tooLight: "read too light", mixed: "missed",
		late: "after the compare", sheets: "from paper", removed: "removed", off: "levels off on average", quiet: "nothing to report",
		flow: "Flow", plane: "Neutral plane", stage: "Stage", regime: "Regime", opening: "Nearest to the seat",
		change: "Change", trend: "Trend", pick: "Which of two", moment: "Moment to report",
	},
	"es": {
		caution:   "ENTRENAMIENTO, NO UN INCIDENTE. Un registro de entrenamiento de Lintel; no prueba aptitud para el servicio.",
		report:    "Informe de la clase",
		rehearsal: "Un ensayo: nada de esto queda en el registro de nadie.",
		opened:    "Abierta", ended: "Terminada", running: "aún en marcha", people: "Personas", scenes: "Escenas", scene: "Escena",
		version: "Motor y contenido", perCue: "Acuerdo con lo cierto, señal por señal", repeat: "Para repetir", each: "Cada persona",
		commits: "Lecturas", truth: "Cierto", right: "acertadas", unsure: "no se puede decir", sure: "seguridad",
		doubted: "El instructor no está de acuerdo con esta clave; queda fuera de toda puntuación.",
		apart:   "Más alejadas", none: "Nada destacó.", or: " o ", against: " frente a ",
		tooHeavy: "lectura demasiado fuerte", tooLight: "lectura demasiado leve", mixed: "con fallos",
		late: "después de comparar", sheets: "de papel", removed: "quitada", off: "niveles de más o de menos en promedio", quiet: "nada que comunicar",
		flow: "Flujo", plane: "Plano neutro", stage: "Etapa", regime: "Régimen", opening: "La más cercana al foco",
		change: "Cambio", trend: "Tendencia", pick: "Cuál de las dos", moment: "Momento de comunicar",
	},
}

// Languages are those that a report can be written in.
var Languages = []string{"en", "es"}
