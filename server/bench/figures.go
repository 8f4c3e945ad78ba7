package bench

// Figures lists every promised figure in the order in which they are printed.
// Those without a Measure print null with what they need.
func Figures() []Figure {
	return []Figure{
		ventFlow,
		layerTemp,
		layerDepth,
		smallBox,
		conservation,
		fireSpeed,
		fireSpeedWasm,
		fireReadOut,
		readingWasm,
		{Name: "stage_exact", Unit: "share", Goal: "within 2 points of the best learned rival", Needs: "unseen simulated buildings and the learned rivals"},
		{Name: "stage_noisy", Unit: "share", Goal: "within 2 points of the best learned rival", Needs: "unseen simulated buildings and the learned rivals"},
		{Name: "calibration", Unit: "-", Goal: "0.02", Needs: "unseen simulated buildings"},
		{Name: "confident_wrong", Unit: "share", Goal: "0.005", Needs: "unseen simulated buildings"},
		{Name: "roles", Unit: "share", Goal: "0.98", Needs: "unseen simulated buildings"},
		{Name: "plane", Unit: "share", Goal: "0.95", Needs: "unseen simulated buildings"},
		casesFigure,
		pictureTruth,
		frameScript,
		firstPaint,
		criticalBytes,
		installBytes,
		wasmBytes,
		{Name: "tap_paint", Unit: "ms", Goal: "50", Needs: "a browser with a throttled processor"},
		{Name: "lighthouse", Unit: "points", Goal: "100 each", Needs: "the page auditor"},
		class30,
		class1000,
		class5000,
		answersDurable,
		syncHistories,
		kill9,
		learners,
		{Name: "asvs", Unit: "items", Goal: "0", Needs: "the table of verification items"},
		startReady,
		binaryBytes,
	}
}
