import { batch, signal } from '@preact/signals'
import { busy } from '../../sw/update'
import { randomSeed } from '../../local/random'
import { isFull, store } from '../../local/store'
import { firstFair } from '../../practice/fair'
import { unseen } from '../../practice/forms'
import { answersOf } from '../../practice/record'
import type { Answer, FormKind, Item, Reply, Scene, Verdict } from '../../wire.gen'
import { engine } from '../../worker/client'
import { chooseScenes, type Size } from './choose'

// The open set of scenes. It is kept on the device after every answer, so that
// a reload, a call or an empty battery loses nothing.

/** What was committed on one scene. */
export interface Done {
  item: Pick<Item, 'family' | 'seed' | 'title' | 'kind' | 'question'>
  verdict: Verdict
}

export interface DrillSet {
  /** Given for a test: nothing is explained before its end. */
  form?: FormKind
  /** As many as were asked for; a test has its own number. */
  size?: Size
  scenes: Scene[]
  done: Done[]
  /** Answers to the open scene, not committed yet. */
  replies: Reply[]
  confidence?: number | undefined
}

export type Phase = 'answering' | 'committing' | 'revealed'
/** Why an answer could not be kept. Full: there is no room left on the device. */
export type Trouble = 'full' | 'failed'

export const set = signal<DrillSet | undefined>(undefined)
/** Shown: the start, a scene, or the end of the set. */
export const showing = signal<'start' | 'scene' | 'end'>('start')
export const item = signal<Item | undefined>(undefined)
export const phase = signal<Phase>('answering')
export const verdict = signal<Verdict | undefined>(undefined)
export const failed = signal<string | undefined>(undefined)
/** The answer committed last is on the disk, or why it is not. */
export const trouble = signal<Trouble | undefined>(undefined)

/** The first three minutes are shown: swatches and their words. */
export const matching = signal(false)
/** What comes next is being chosen. */
export const choosing = signal(false)

let firstSeen = 0
let made: { scene: Scene; item: Promise<Item> } | undefined
/** The set that was open has been brought back, or there was none. */
export const restored = signal(false)
/** Nothing was written down on this device and no scene was read: the words come before the first one. */
export const newcomer = signal(false)
/** How many scenes a set will have. */
export const chosenSize = signal<Exclude<Size, 'pre_shift'>>(8)

/** Brings back the set that was open, if any. */
export async function restore(): Promise<void> {
  if (restored.value) return
  const opened = await store()
  const [kept, self] = await Promise.all([opened.kept<DrillSet>('drill'), opened.journal.self()])
  newcomer.value = self.next === 1
  if (kept && kept.done.length < kept.scenes.length) set.value ??= kept
  restored.value = true
}

export function begin(size: Size): Promise<void> {
  return start(async () => ({ size, scenes: await chooseScenes(size) }))
}

/** A test: scenes that no drill and no other test shows, those of it that were not answered yet. */
export function beginForm(form: FormKind): Promise<void> {
  return start(async () => {
    const { journal } = await store()
    const { device } = await journal.self()
    return { form, scenes: unseen(await engine.form(form, device), answersOf(await journal.events())) }
  })
}

async function start(choose: () => Promise<Pick<DrillSet, 'form' | 'size' | 'scenes'>>): Promise<void> {
  failed.value = undefined
  choosing.value = true
  try {
    set.value = { ...(await choose()), done: [], replies: [] }
    await keep()
    await openScene()
  } catch (error) {
    failed.value = spell(error)
  } finally {
    choosing.value = false
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
    trouble.value = undefined
    busy.value = true
  })
  firstSeen = 0
  try {
    item.value = await makeOrReplace(scene)
  } catch (error) {
    failed.value = spell(error)
  }
}

/** In the place of an unfair scene another seed of its family is tried, then another family; a test keeps its scenes. */
function makeOrReplace(scene: Scene): Promise<Item> {
  const barren = new Set<string>()
  return firstFair(scene, make, async (unfair, turn) => {
    if (!set.value || set.value.form) return undefined
    if (turn % 2 === 0) barren.add(unfair.family)
    const wanted = await another(unfair, barren)
    const scenes = set.value.scenes.with(set.value.done.length, wanted)
    set.value = { ...set.value, scenes }
    await keep()
    return wanted
  })
}

async function another(scene: Scene, barren: ReadonlySet<string>): Promise<Scene> {
  if (!barren.has(scene.family)) return { family: scene.family, seed: randomSeed() }
  const used = new Set(set.value!.scenes.map(({ family }) => family))
  const others = (await engine.families()).filter(({ id }) => !barren.has(id) && !used.has(id))
  return (await chooseScenes(5, others))[0] ?? { family: scene.family, seed: randomSeed() }
}

/** Makes the item of a scene, or takes the one already being made. */
function make(scene: Scene): Promise<Item> {
  if (made?.scene !== scene) made = { scene, item: engine.item(scene.family, scene.seed, scene.contrast) }
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
  trouble.value = undefined
  try {
    const answer = answerOf(asked, open)
    const scored = await engine.score(answer)
    await (await store()).record('answer', scored.engine, { answer, verdict: scored })
    await reveal(asked, scored)
  } catch (error) {
    phase.value = 'answering'
    trouble.value = isFull(error) ? 'full' : 'failed'
  }
}

/** There is no room to keep the answer: the drill goes on without. */
export async function goOnUnkept(): Promise<void> {
  const [open, asked] = [set.value, item.value]
  if (open && asked) await reveal(asked, await engine.score(answerOf(asked, open)))
}

/** Shows the truth; of a test nothing, not for an instant, and the next scene at once. */
async function reveal(asked: Item, scored: Verdict): Promise<void> {
  const open = set.value!
  const { family, seed, title, kind, question } = asked
  const { form, size, scenes } = open
  const done = [...open.done, { item: { family, seed, title, kind, question }, verdict: scored }]
  batch(() => {
    set.value = { ...(form && { form }), ...(size && { size }), scenes, done, replies: [] }
    busy.value = false
    newcomer.value = false
    if (form) return void (item.value = undefined)
    verdict.value = scored
    phase.value = 'revealed'
  })
  await keep()
  const following = scenes[done.length]
  if (following) make(following).catch(() => {}) // said when it is opened
  if (form) await openScene()
}

function answerOf(asked: Item, open: DrillSet): Answer {
  const { v, engine: version, content, family, seed, contrast } = asked
  const took_s = firstSeen ? Math.round((performance.now() - firstSeen) / 100) / 10 : 0
  const replies = asked.question.asks.map(({ id }) => open.replies.find(({ ask }) => ask === id)!)
  const more = { ...(contrast && { contrast }), ...(open.confidence !== undefined && { confidence: open.confidence }) }
  return { v, engine: version, content, family, seed, replies, took_s, ...more }
}

export function leave(): void {
  batch(() => {
    showing.value = 'start'
    busy.value = false
  })
}

/** Keeps the open set. With no room left it lives on in this page alone. */
async function keep(): Promise<void> {
  const open = set.value
  const whole = open && open.done.length === open.scenes.length
  try {
    await (await store()).keep('drill', whole ? undefined : open)
  } catch (error) {
    if (!isFull(error)) throw error
  }
}

function spell(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
