// Contact sheets for a person's eye, drawn by the app's own renderer.
//   stages  fires as families make them: a row of up to four a stage, denser to the right, as unlike in building, family
//           and cues as there are, every third by day, at dusk and by night; gaps count too: what a starved fire shows
//   looks   16 single openings: pairs that must be told apart at a glance
//
//   node pwa/fidelity/sheet.mjs FOLDER [-seed N] [-theme light|dark|outdoor] [-only stages|looks]
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { frameOf, LOOKS } from './lib/looks.mjs'
import { drawStates, froude } from './lib/states.mjs'
import { openStudio } from './lib/studio.mjs'

const { values: flags, positionals } = parseArgs({
  args: process.argv.slice(2).map((arg) => arg.replace(/^-(?=[a-z]{2})/, '--')),
  options: { seed: { type: 'string', default: '1' }, theme: { type: 'string', default: 'light' }, only: { type: 'string' } },
  allowPositionals: true,
})
const folder = positionals[0]
if (!folder) {
  console.error('sheet: no folder: say where the sheets go')
  process.exit(2)
}
mkdirSync(folder, { recursive: true })

const ACROSS = 4
const ENOUGH = 700 // states to choose from: smoke of a starved fire shows in few, as it is mostly shut in
const SIZE = { width: 300, height: 340 }
const WARM_S = 1.5 // after the head start that every scene has
const LIGHTS = ['day', 'dusk', 'night']

const studio = await openStudio()
const { emptyFrame } = await studio.module('/src/render/frame.ts')
const { STAGE_WORDS: STAGES } = await studio.module('/src/wire.gen.ts')
const { box } = await studio.module('/src/buildings/box.ts')
const { bungalow } = await studio.module('/src/buildings/houses.ts')

async function picture(take) {
  const [png] = await studio.page.evaluate((one) => globalThis.lintelPlayer.drawWall(one), { ...SIZE, theme: flags.theme, warmS: WARM_S, pictures: 1, betweenS: 0, ...take })
  return png
}

/** Lays pictures with their captions out on one page and photographs it. */
async function layOut(name, cells, across) {
  const page = await studio.newPage()
  await page.setViewportSize({ width: across * (SIZE.width + 8) + 8, height: 400 })
  await page.setContent(`<body style="margin:8px;background:#f6f2e9;font:12px system-ui;color:#23201c;display:grid;gap:8px;grid-template-columns:repeat(${across},${SIZE.width}px)">${cells
    .map(({ png, caption, starts }) => `<figure style="margin:0;${starts ? 'grid-column-start:1' : ''}"><img width=${SIZE.width} src="data:image/png;base64,${png}"><figcaption>${caption}</figcaption></figure>`).join('')}</body>`)
  await page.screenshot({ path: join(folder, name), fullPage: true })
  await page.close()
}

const buildingOf = ({ scenario }) => scenario.compartments.map(({ id }) => id).join()
const among = (states, what, state) => states.filter((other) => what(other) === what(state)).length

/** How differently two outflows look: steps of one are about a level of each cue. */
const unlike = ({ look: a, heightM: x }, { look: b, heightM: y }) =>
  Math.abs(Math.log2(a.opticalDepth / b.opticalDepth)) + Math.abs(Math.log2(froude(a.outVelocityMS, x) / froude(b.outVelocityMS, y))) + 5 * Math.abs(a.lightness - b.lightness)

/** Ranks states for the next place of a row: another building and family than stand in it, a family shown seldom, and as unlike the others as may be. */
function rankIn(row, shown, state) {
  const strange = row.length === 0 ? state.look.opticalDepth : Math.min(...row.map((other) => unlike(state, other)))
  return [among(row, buildingOf, state), among(row, ({ family }) => family, state), shown.get(state.family) ?? 0, -strange]
}

const before = (a, b) => a.map((value, k) => value - b[k]).find((off) => off !== 0) ?? 0

/** As many states of one stage as stand in a row, the thinnest smoke first. */
function rowOf(states, shown) {
  const row = []
  while (row.length < Math.min(ACROSS, states.length)) {
    const [best] = states.filter((state) => !row.includes(state))
      .map((state) => ({ state, rank: rankIn(row, shown, state) })).toSorted((a, b) => before(a.rank, b.rank))
    row.push(best.state)
    shown.set(best.state.family, 1 + (shown.get(best.state.family) ?? 0))
  }
  return row.toSorted((a, b) => a.look.opticalDepth - b.look.opticalDepth)
}

async function stages() {
  const states = await drawStates(studio, { enough: ENOUGH, seed: Number(flags.seed), gaps: true })
  const stageOf = (state) => STAGES[state.frame.header.stage] ?? '?'
  const shown = new Map()
  const cells = []
  for (const stage of [...new Set(states.map(stageOf))].toSorted((a, b) => STAGES.indexOf(a) - STAGES.indexOf(b))) {
    for (const [k, state] of rowOf(states.filter((one) => stageOf(one) === stage), shown).entries()) {
      const { look } = state
      const caption = `<b>${stage}</b>, ${state.family}: depth ${look.opticalDepth.toFixed(1)}, ${look.outVelocityMS.toFixed(2)} m/s (${froude(look.outVelocityMS, state.heightM).toFixed(2)}), lightness ${look.lightness.toFixed(2)}, churning ${look.churning.toFixed(1)}`
      cells.push({ starts: k === 0, caption, png: await picture({ scenario: state.scenario, side: state.side, frame: state.frame, opening: state.opening, near: false, light: LIGHTS[cells.length % LIGHTS.length] }) })
    }
  }
  await layOut('stages.png', cells, ACROSS)
}

async function looks() {
  const cells = []
  for (const [scenario, opening] of [[box, 'port_lower_left'], [bungalow, bungalow.openings.find(({ kind, to }) => kind === 'door' && to === 'outside').id]]) {
    const { side } = scenario.openings.find(({ id }) => id === opening)
    for (const [name, look] of LOOKS) {
      const caption = `<b>${name}</b> ${Object.entries(look).map(([key, value]) => `${key} ${value}`).join(', ')}`
      cells.push({ png: await picture({ scenario, side, opening, near: true, frame: frameOf(look, { emptyFrame, scenario, opening }) }), caption })
    }
  }
  await layOut('looks.png', cells, ACROSS)
}

const sheets = { stages, looks }
for (const [name, make] of Object.entries(sheets)) if (!flags.only || flags.only === name) await make()
for (const one of studio.complaints) console.error(one)
await studio.close()
process.exit(studio.complaints.length > 0 ? 1 : 0)
