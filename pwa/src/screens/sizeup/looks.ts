import type { Colour, Cue, FlameSeen, Flow, GlassSeen, OpeningState, Plan, Reading, Readings, Side } from '../../wire.gen'
import { outsides, storeysOf, type Outside, type Sketch } from './sketch'

// What one person saw at one time, opening by opening. "Cannot tell" is kept
// apart from "not yet looked at", though both reach the engine as not seen.

export interface Rating {
  state?: OpeningState
  flow?: Flow
  volume?: number
  velocity?: number
  density?: number
  darkness?: number
  colour?: Colour
  churning?: boolean
  pulsing?: boolean
  vanishes?: boolean
  flame?: FlameSeen
  window?: GlassSeen
  neutral_plane?: number
  /** Looked at, and could not be told. */
  cannotTell?: Cue[]
}

export interface LookAt {
  /** The device's clock, ms. */
  at: number
  ratings: Record<string, Rating>
  windMS?: number | undefined
  windFrom?: Side | undefined
  water?: boolean | undefined
  /** Openings that someone opened or shut just before this look. */
  changed: string[]
}

export type CueValue = string | number | boolean

/** What is asked of an opening: how it stands, then its cues. */
export type Asked = Cue | 'state'

export function newLook(at: number, before?: LookAt): LookAt {
  return { at, ratings: {}, changed: [], windMS: before?.windMS, windFrom: before?.windFrom, water: before?.water }
}

export function cueOf(rating: Rating | undefined, cue: Asked): CueValue | null | undefined {
  if (cue !== 'state' && rating?.cannotTell?.includes(cue)) return null
  return rating?.[cue]
}

/** The rating with one cue set, or with null marked "cannot tell". */
export function withCue(rating: Rating | undefined, cue: Asked, value: CueValue | null): Rating {
  const next: Rating = { ...rating, cannotTell: (rating?.cannotTell ?? []).filter((one) => one !== cue) }
  if (value === null && cue !== 'state') {
    next.cannotTell!.push(cue)
    delete next[cue]
    return next
  }
  return Object.assign(next, { [cue]: value })
}

/** The cues of one opening: those asked in turn, and those for whoever wants all. */
export interface CueRound {
  main: Asked[]
  more: Asked[]
}

/**
 * What to ask of an opening: how it stands and what moves, then what tells most
 * (speed, thickness, darkness, amount: the trade's own order, common practice, no
 * source), so that a round is short. A cue that the next look names is among them.
 * Gas that passes one way only has no plane; only glass can be stained.
 */
export function cuesFor({ kind }: Outside, rating: Rating | undefined, next?: Cue): CueRound {
  const main: Asked[] = ['state', 'flow', 'velocity', 'density', 'darkness', 'volume']
  const flat = kind === 'crack' || kind === 'roof'
  if (!flat && (rating?.flow === 'both' || rating?.flow === undefined)) main.push('neutral_plane')
  const more: Cue[] = ['flame', 'churning', 'pulsing', ...(kind === 'window' ? (['window'] as const) : []), 'vanishes', 'colour']
  if (!next || !more.includes(next)) return { main, more }
  return { main: [...main, next], more: more.filter((cue) => cue !== next) }
}

/** How many of an opening's cues were looked at. */
export function seen(rating: Rating | undefined): number {
  if (!rating) return 0
  const { cannotTell = [], state: _state, ...rated } = rating
  return Object.keys(rated).length + cannotTell.length
}

/** Everything seen, in the shape the engine reads: version 1 of the readings file. */
export function toReadings(sketch: Sketch, looks: readonly LookAt[]): Readings {
  const outside = outsides(sketch)
  const start = looks[0]?.at ?? 0
  return {
    v: 1,
    building: {
      kind: 'house',
      storeys: storeysOf(sketch.plan).length,
      ...(sketch.construction ? { construction: sketch.construction } : {}),
    },
    ...(sketch.insideKnown ? { plan: planNow(sketch, looks.at(-1)) } : {}),
    looks: looks.map((look) => ({
      t_s: Math.max(0, Math.round((look.at - start) / 1000)),
      ...windOf(look),
      ...(look.water === undefined ? {} : { water: look.water }),
      ...(look.changed.length ? { changes: look.changed.map((id) => changeOf(look, id)) } : {}),
      openings: outside.filter(({ id }) => look.ratings[id]).map((one) => toReading(one, look.ratings[one.id]!)),
    })),
  }
}

/** How far an opening stands open where only its state was seen. Part open is taken as half (chosen by us). */
const shareOpen: Partial<Record<OpeningState, number>> = { open: 1, broken: 1, part: 0.5, closed: 0 }

/** The plan with its outside openings standing as last seen. */
function planNow({ plan }: Sketch, look: LookAt | undefined): Plan {
  const openings = plan.openings.map((one) => {
    const open = shareOpen[look?.ratings[one.id]?.state ?? 'unknown']
    return open === undefined ? one : { ...one, open }
  })
  return { ...plan, openings }
}

function windOf({ windMS, windFrom }: LookAt) {
  if (windMS === undefined && windFrom === undefined) return {}
  return { wind: { ...(windMS === undefined ? {} : { m_s: windMS }), ...(windFrom ? { from: windFrom } : {}) } }
}

function changeOf(look: LookAt, opening: string) {
  return { opening, state: look.ratings[opening]?.state ?? ('unknown' as const) }
}

function toReading(one: Outside, { cannotTell: _cannotTell, ...rated }: Rating): Reading {
  const { width_m, height_m } = one.opening
  return {
    id: one.id,
    ...(one.side ? { side: one.side } : {}),
    floor: one.floor,
    kind: one.kind,
    state: 'unknown',
    ...(width_m === undefined ? {} : { width_m }),
    ...(height_m === undefined ? {} : { height_m }),
    ...rated,
  }
}
