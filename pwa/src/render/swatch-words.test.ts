import { expect, test } from 'vitest'
import { DAY } from './draw/palette'
import { STEP_S } from './fluid/step'
import type { Picture } from './picture'
import { swatchPicture } from './swatch'
import type { SwatchCue } from './swatch-look'
import { swatchWords } from './swatch-words'
import { grey } from './tone'
import { openArea } from './view'

const CUES = ['volume', 'velocity', 'density', 'darkness'] as const
const LEVELS = [0, 1, 2, 3, 4]
const SECONDS = 2.5
/** One looks at it for a while, as smoke that churns is never twice alike. */
const LOOKS = 8
const BETWEEN_S = 0.25

/** What the pixels of a swatch show over its opening: how much the densest row hides, the share of rows that hide half of that, and the smoke's grey; over two seconds. */
function shown(cue: SwatchCue, level: number) {
  const { picture, frame } = swatchPicture(cue, level)
  const run = (seconds: number) => {
    for (let at = 0; at < seconds; at += STEP_S) {
      picture.follow(frame)
      picture.step()
    }
  }
  run(SECONDS)
  const looks = Array.from({ length: LOOKS }, () => {
    run(BETWEEN_S)
    picture.paint(DAY.smoke)
    return rowsOf(picture)
  })
  const hides = looks[0]!.map((_, y) => mean(looks.map((rows) => rows[y]!.hides)))
  const most = Math.max(...hides)
  const covered = hides.filter((share) => share > 0.03 && share > most / 2).length / hides.length
  return { most, covered, grey: mean(looks.map((rows) => rows[hides.indexOf(most)]!.grey)) }
}

/** How much each row of the opening hides, and its grey. */
function rowsOf(picture: Picture): { hides: number; grey: number }[] {
  const { x0, x1, y0, y1 } = openArea(picture.view, picture.view.layout.places[0]!, 1)
  const perM = picture.columns / picture.view.widthM
  const rows: { hides: number; grey: number }[] = []
  for (let y = Math.round(y0 * perM); y < Math.round(y1 * perM); y++) {
    const row = Array.from({ length: Math.round((x1 - x0) * perM) - 4 }, (_, k) => 4 * (y * picture.columns + Math.round(x0 * perM) + 2 + k))
    rows.push({ hides: mean(row.map((p) => picture.front[p + 3]! / 255)), grey: mean(row.map((p) => picture.front[p]!)) })
  }
  return rows
}

const mean = (all: number[]) => all.reduce((a, b) => a + b, 0) / all.length

/** Tenths in a sentence; all of it is ten. */
function tenths(said: string, before: string): number {
  const [, found] = new RegExp(`${before} (all|less than a tenth|a tenth|(\\d) tenths)`).exec(said) ?? []
  if (found === undefined) throw new Error(`no tenths after ${before} in ${said}`)
  return found === 'all' ? 10 : found.startsWith('less') ? 0 : found === 'a tenth' ? 1 : Number(found[0])
}

/** What words say that the pixels do not show. */
function wrong(said: string, { most, covered, grey: seen }: ReturnType<typeof shown>): string[] {
  if (said.includes('Nothing comes out')) return most < 0.03 ? [] : ['nothing']
  if (most < 0.03) return ['something']
  const share = said.includes('out of all of it') ? 10 : tenths(said, 'over the upper')
  const dark = said.includes('It is white') ? 0 : said.includes('It is black') ? 10 : tenths(said, 'Its shade lies')
  const asSaid = DAY.smoke.cast[0] * grey(DAY.smoke.dark + (DAY.smoke.pale - DAY.smoke.dark) * (1 - dark / 10))
  const off = { hides: tenths(said, 'The smoke hides') - 10 * most, share: (share - 10 * covered) / 1.2, shade: (asSaid - seen) / 20 }
  return Object.entries(off).filter(([, by]) => Math.abs(by) > 1).map(([name]) => name)
}

test.each(CUES)('the words of a swatch of %s say what its pixels show, and those of another level do not', (cue) => {
  for (const level of LEVELS) {
    const seen = shown(cue, level)
    expect(wrong(swatchWords(cue, level), seen), `${cue} ${level}`).toEqual([])
    if (cue !== 'velocity') expect(wrong(swatchWords(cue, (level + 2) % LEVELS.length), seen), `${cue} ${level}`).not.toEqual([]) // one picture shows no speed
  }
}, 60_000)

test('no two levels of a cue are told alike, and none is named', () => {
  for (const cue of CUES) {
    const all = LEVELS.map((level) => swatchWords(cue, level))
    expect(new Set(all).size, all.join('\n')).toBe(LEVELS.length)
    for (const said of all) expect(said).not.toMatch(/level|haze|veil|curtain|solid|wisps|driven|pushed/i)
  }
})
