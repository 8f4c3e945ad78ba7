import { batch, signal } from '@preact/signals'
import { busy } from '../../app/update'
import { randomBelow, randomSeed } from '../../local/random'
import { store } from '../../local/store'
import type { Answer, Item, Reply, Verdict } from '../../wire.gen'
import { engine } from '../../worker/client'
import { pickSet, type Scene } from './pick'

// The open set of scenes. It is kept on the device after every answer, so that
// a reload, a call or an empty battery loses nothing.

/** What was committed on one scene. */
export interface Done {
  item: Pick<Item, 'family' | 'seed' | 'title' | 'kind' | 'question'>
  verdict: Verdict
}

export interface DrillSet {
  scenes: Scene[]
  done: Done[]
  /** Answers to the open scene, not committed yet. */
  replies: Reply[]
  confidence?: number | undefined
}

export type Phase = 'answering' | 'committing' | 'revealed'

export const set = signal<DrillSet | undefined>(undefined)
/** Shown: the start, a scene, or the end of the set. */
export const showing = signal<'start' | 'scene' | 'end'>('start')
export const item = signal<Item | undefined>(undefined)
export const phase = signal<Phase>('answering')
export const verdict = signal<Verdict | undefined>(undefined)
export const failed = signal<string | undefined>(undefined)

let firstSeen = 0
let made: { scene: Scene; item: Promise<Item> } | undefined
/** The set that was open has been brought back, or there was none. */
export const restored = signal(false)

/** Brings back the set that was open, if any. */
export async function restore(): Promise<void> {
  if (restored.value) return
  const kept = await (await store()).kept<DrillSet>('drill')
  if (kept && kept.done.length < kept.scenes.length) set.value ??= kept
  restored.value = true
}

export async function begin(): Promise<void> {
  failed.value = undefined
  try {
    const scenes = pickSet(await engine.families(), randomBelow, randomSeed)
    set.value = { scenes, done: [], replies: [] }
    await keep()
    await openScene()
  } catch (error) {
    failed.value = String(error instanceof Error ? error.message : error)
  }
}

/** Shows the first scene that was not committed. */
export async function openScene(): Promise<void> {
  const scene = set.value && set.value.scenes[set.value.done.length]
  if (!scene) return void (showing.value = 'end')
  batch(() => {
    showing.value = 'scene'
    phase.value = 'answering'
    item.value = undefined
    verdict.value = undefined
    failed.value = undefined
    busy.value = true
  })
  try {
    item.value = await makeOrReplace(scene)
  } catch (error) {
    failed.value = String(error instanceof Error ? error.message : error)
  }
}

// A seed whose scene would be unfair has none; another family is then taken.
// So often before giving up: chosen by us.
const mostReplaced = 6

async function makeOrReplace(scene: Scene): Promise<Item> {
  let wanted = scene
  const barren = new Set<string>()
  for (let turn = 1; ; turn++) {
    try {
      return await make(wanted)
    } catch (error) {
      if (turn === mostReplaced || !set.value) throw error
      barren.add(wanted.family)
      const others = (await engine.families()).filter(({ id }) => !barren.has(id))
      wanted = pickSet(others, randomBelow, randomSeed)[0] ?? { family: wanted.family, seed: randomSeed() }
      const scenes = set.value.scenes.with(set.value.done.length, wanted)
      set.value = { ...set.value, scenes }
      await keep()
    }
  }
}

/** Makes the item of a scene, or takes the one already being made. */
function make(scene: Scene): Promise<Item> {
  if (made?.scene !== scene) made = { scene, item: engine.item(scene.family, scene.seed) }
  return made.item
}

/** The picture is there: the clock of the answer starts. */
export function seen(): void {
  if (firstSeen === 0) firstSeen = performance.now()
}

export function reply(given: Reply): void {
  const open = set.value
  if (!open) return
  const replies = [...open.replies.filter(({ ask }) => ask !== given.ask), given]
  set.value = { ...open, replies }
  void keep()
}

export function beSure(confidence: number): void {
  if (set.value) set.value = { ...set.value, confidence }
  void keep()
}

/** Scores the answers and writes both to the disk; only then is anything revealed. */
export async function commit(): Promise<void> {
  const [open, asked] = [set.value, item.value]
  if (!open || !asked) return
  phase.value = 'committing'
  failed.value = undefined
  try {
    const answer = answerOf(asked, open)
    const scored = await engine.score(answer)
    const opened = await store()
    await opened.record('answer', scored.engine, { answer, verdict: scored })
    const { family, seed, title, kind, question } = asked
    const done = [...open.done, { item: { family, seed, title, kind, question }, verdict: scored }]
    batch(() => {
      set.value = { scenes: open.scenes, done, replies: [] }
      verdict.value = scored
      phase.value = 'revealed'
      busy.value = false
      firstSeen = 0
    })
    await keep()
    const following = open.scenes[done.length]
    if (following) make(following).catch(() => {}) // said when it is opened
  } catch (error) {
    phase.value = 'answering'
    failed.value = String(error instanceof Error ? error.message : error)
  }
}

function answerOf(asked: Item, open: DrillSet): Answer {
  const { v, engine: version, content, family, seed } = asked
  const took_s = firstSeen ? Math.round((performance.now() - firstSeen) / 100) / 10 : 0
  const replies = asked.question.asks.map(({ id }) => open.replies.find(({ ask }) => ask === id)!)
  const answer: Answer = { v, engine: version, content, family, seed, replies, took_s }
  return open.confidence === undefined ? answer : { ...answer, confidence: open.confidence }
}

export function leave(): void {
  batch(() => {
    showing.value = 'start'
    busy.value = false
  })
}

async function keep(): Promise<void> {
  const open = set.value
  const whole = open && open.done.length === open.scenes.length
  await (await store()).keep('drill', whole ? undefined : open)
}
