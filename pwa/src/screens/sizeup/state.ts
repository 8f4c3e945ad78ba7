import { batch, computed, effect, signal } from '@preact/signals'
import { store } from '../../local/store'
import { rise } from '../../ui/scroll'
import type { Cue, Finding, Side } from '../../wire.gen'
import { engine, EngineProblem } from '../../worker/client'
import { cuesFor, newLook, cueOf, toReadings, withCue, type Asked, type CueValue, type LookAt, type Rating } from './looks'
import { outsides, type Outside, type Sketch } from './sketch'

// The open size-up: the building, the looks at it, and the reading the engine
// gives. It is kept on the device and comes back after a reload.

export type Tab = 'building' | 'look' | 'reading'
export type Place = Side | 'roof'

export const tab = signal<Tab>('building')
export const sketch = signal<Sketch | undefined>(undefined)
export const looks = signal<LookAt[]>([])
export const facing = signal<Place>('A')
/** The opening being rated and the cue being asked. */
export const opening = signal<string | undefined>(undefined)
export const cue = signal<Asked | undefined>(undefined)

export const finding = signal<Finding | undefined>(undefined)
export const problem = signal<EngineProblem | undefined>(undefined)
export const saved = signal(false)

export const look = computed(() => looks.value.at(-1))
export const before = computed(() => looks.value.at(-2))
export const all = computed(() => (sketch.value ? outsides(sketch.value) : []))
export const here = computed(() => all.value.filter((one) => (one.side ?? 'roof') === facing.value))
export const rated = computed(() => Object.keys(look.value?.ratings ?? {}).length)

export function begin(next: Sketch): void {
  batch(() => {
    sketch.value = next
    looks.value = [newLook(Date.now())]
    finding.value = undefined
    saved.value = false
    face('A', false)
    tab.value = 'look'
  })
}

export function face(place: Place, scroll = true): void {
  facing.value = place
  const first = here.value[0]
  opening.value = first?.id
  openNext(first)
  if (scroll) rise('.side-walk')
}

export function lookAt(one: Outside, which?: Cue): void {
  batch(() => {
    facing.value = one.side ?? 'roof'
    opening.value = one.id
    if (which) cue.value = offered.value = which
    else openNext(one)
    tab.value = 'look'
  })
}

/** The cue that was opened because the next look named it. */
const offered = signal<Cue | undefined>(undefined)

/**
 * The cue that the reading would gain most from, where it lies at this opening.
 * While one offered so is open it stays that one, though a newer reading may name
 * another: no row moves under a thumb.
 */
export function nextLookAt(one: Outside): Cue | undefined {
  if (offered.value && offered.value === cue.value && one.id === opening.value) return offered.value
  const next = finding.value?.next_look
  return next?.opening === one.id ? next.cue : undefined
}

/**
 * The cue to open next: how it stands and what moves first, then the one that the
 * next look names, then the rest in their order. The cues under "More" follow one
 * another once the others are done; whoever does not open them is done before.
 */
function nextCue(one: Outside, rating: Rating | undefined, after?: Asked): Asked | undefined {
  const next = nextLookAt(one)
  const { main, more } = cuesFor(one, rating, next)
  const open = (which: Asked) => cueOf(rating, which) === undefined
  const first = main.find(open)
  if (!first && after && more.includes(after)) return more.find(open)
  return next && first !== 'state' && first !== 'flow' && open(next) ? next : first
}

/** Opens the next cue of an opening, and remembers whether the next look named it. */
function openNext(one: Outside | undefined, after?: Asked): void {
  const next = one && nextCue(one, look.value?.ratings[one.id], after)
  offered.value = next && one && next === nextLookAt(one) ? nextLookAt(one) : undefined
  cue.value = next
}

export function rate(one: Outside, which: Asked, value: CueValue | null, moveOn = true): void {
  change(one.id, (rating) => withCue(rating, which, value))
  if (moveOn) openNext(one, which)
}

function change(id: string, next: (rating: Rating | undefined) => Rating): void {
  const now = look.value
  if (now) setLook({ ...now, ratings: { ...now.ratings, [id]: next(now.ratings[id]) } })
}

export function setLook(next: LookAt): void {
  looks.value = [...looks.value.slice(0, -1), next]
  saved.value = false
}

export function lookAgain(): void {
  batch(() => {
    looks.value = [...looks.value, newLook(Date.now(), look.value)]
    saved.value = false
    face('A')
    tab.value = 'look'
  })
}

export function startOver(): void {
  batch(() => {
    sketch.value = undefined
    looks.value = []
    finding.value = undefined
    tab.value = 'building'
  })
}

/** Writes the readings and the reading to the device's history. */
export async function save(): Promise<void> {
  const given = sketch.value && toReadings(sketch.value, looks.value)
  const read = finding.value
  if (!given || !read) return
  const { stage, regime, set, path, hazards, next_look, trend } = read
  const summary = { stage, regime, set, path, hazards, next_look, ...(trend ? { trend } : {}) }
  await (await store()).record('size_up', read.engine, { readings: given, finding: summary })
  saved.value = true
}

// Waits for a pause in the tapping before the engine reads again. Chosen by us.
const pause = 120 // ms
let asked = 0

/** Keeps the reading and the stored copy in step with what is rated. Returns how to stop. */
export function follow(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined
  const stop = effect(() => {
    const given = sketch.value && looks.value.length ? toReadings(sketch.value, looks.value) : undefined
    const kept = sketch.value && { sketch: sketch.value, looks: looks.value }
    clearTimeout(timer)
    timer = setTimeout(() => {
      if (restored.value) void store().then((opened) => opened.keep('size_up', kept)).catch(() => {})
      if (given && rated.value > 0) void readAgain(given)
    }, pause)
  })
  return () => {
    clearTimeout(timer)
    stop()
  }
}

async function readAgain(given: ReturnType<typeof toReadings>): Promise<void> {
  const turn = ++asked
  try {
    const read = await engine.read(given)
    if (turn !== asked) return
    finding.value = read
    problem.value = undefined
  } catch (error) {
    if (turn === asked && error instanceof EngineProblem) problem.value = error
  }
}

/** The size-up that was open has been brought back, or there was none. */
export const restored = signal(false)

/** Brings back the size-up that was open when the page was left. */
export async function restore(): Promise<void> {
  if (restored.value) return
  const kept = await store()
    .then((opened) => opened.kept<{ sketch: Sketch; looks: LookAt[] }>('size_up'))
    .catch(() => undefined) // the page says that nothing is kept; a size-up can still be made
  batch(() => {
    restored.value = true
    if (!kept || sketch.value) return
    sketch.value = kept.sketch
    looks.value = kept.looks
    face('A', false)
    tab.value = 'look'
  })
}
