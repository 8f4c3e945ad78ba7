import { signal } from '@preact/signals'
import { act, type Act } from '../../class/desk'
import type { Lead as Key } from '../../class/ask'
import { say } from '../../class/say'

/** Leads one class: what is pressed is done on the server, and the board follows from there. */
export class Lead {
  readonly id: string
  /** Given where the class was handed to this phone or tablet. */
  readonly key: Key | undefined
  readonly failed = signal<string | undefined>(undefined)
  readonly waiting = signal(false)

  constructor(id: string, key: Key | undefined) {
    this.id = id
    this.key = key
  }

  /** True when it was done. One act at a time: a double press is one press. */
  async do(what: Act): Promise<boolean> {
    if (this.waiting.value) return false
    this.waiting.value = true
    this.failed.value = undefined
    try {
      await act(this.id, what, this.key)
      return true
    } catch (error) {
      this.failed.value = say(error)
      return false
    } finally {
      this.waiting.value = false
    }
  }
}
