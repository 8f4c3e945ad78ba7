import { ScenePlayer } from './scene-player'
import { SwatchPlayer } from './swatch-player'
import type { Drawn, PageLook, Told } from './told'

/** How often the page hears what its pictures took. Chosen by us. */
const SAID_EVERY_MS = 250

/** Everything that moves on a page, drawn by one clock: on a thread of its own, or where there is none on the page's. */
export class Players {
  readonly #scenes = new Map<number, ScenePlayer>()
  readonly #swatches = new SwatchPlayer()
  readonly #say: (drawn: Drawn) => void
  #page: PageLook = { theme: undefined, us: false, calm: false }
  #drawn: number[] = []
  #saidAt = -Infinity

  constructor(say: (drawn: Drawn) => void) {
    this.#say = say
    const tick = (now: number) => {
      requestAnimationFrame(tick)
      this.#tick(now)
    }
    requestAnimationFrame(tick)
  }

  tell(told: Told): void {
    if ('page' in told) this.#look(told.page)
    else if ('canvas' in told) this.#add(told)
    else if ('swatch' in told) this.#swatches.show(told.id, told.swatch)
    else if ('gone' in told) this.#remove(told.id)
    else this.#scenes.get(told.id)?.tell(told)
  }

  #look(page: PageLook): void {
    this.#page = page
    this.#swatches.again()
  }

  #add({ id, kind, canvas }: Extract<Told, { canvas: unknown }>): void {
    if (kind === 'swatch') this.#swatches.add(id, canvas)
    else this.#scenes.set(id, new ScenePlayer(canvas))
  }

  #remove(id: number): void {
    this.#scenes.delete(id)
    this.#swatches.remove(id)
  }

  #tick(now: number): void {
    for (const one of this.#scenes.values()) {
      const began = performance.now()
      const took = one.tick(now, this.#page)
      if (took !== undefined) this.#drawn.push(performance.timeOrigin + began, took)
    }
    this.#swatches.tick(now, this.#page)
    if (this.#drawn.length === 0 || now - this.#saidAt < SAID_EVERY_MS) return
    this.#saidAt = now
    this.#say({ drawn: this.#drawn })
    this.#drawn = []
  }
}
