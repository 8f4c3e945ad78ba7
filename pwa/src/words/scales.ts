import { capital } from './sentence'
import spanish from '../generated/es/scales.json'
import english from '../generated/scales.json'
import type { Colour } from '../wire.gen'
import { language } from './language'

// The words of the scales come from content/scales, by way of the content
// compiler: what a person rates by is what the engine cuts by.

const book = language === 'es' ? spanish : english

/** The cues rated in steps. */
export type OrdinalCue = 'volume' | 'velocity' | 'density' | 'darkness'
export const ordinalCues: readonly OrdinalCue[] = ['volume', 'velocity', 'density', 'darkness']

export interface LevelWords {
  level: number
  name: string
  looks: string
}

/** What a cue asks and what each of its levels looks like. */
export function scale(cue: OrdinalCue): { title: string; question: string; levels: readonly LevelWords[] } {
  const found = book.scales.find((one) => one.cue === cue)
  if (!found) throw new Error(`content/scales has no ${cue}`)
  return found
}

export function levelName(cue: OrdinalCue, level: number): string {
  return capital(scale(cue).levels.find((one) => one.level === level)?.name ?? String(level))
}

/** The hues a person may name, with what each usually says. */
export const hues: readonly { colour: Colour; name: string; says: string; also: string }[] = book.hues as never

export const scalesNote: string = book.note
