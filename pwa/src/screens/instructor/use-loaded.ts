import { useEffect, useState } from 'preact/hooks'
import { Refused } from '../../class/ask'
import { say } from '../../class/say'
import { refused } from '../../words/refused'
import { look } from './state'

interface Loaded<T> {
  value: T | undefined
  failed: string | undefined
  again(): void
}

/** The one of a list that an address names; where there is none, that is said. */
export function found<T extends { id: string }>(all: readonly T[], id: string): T {
  const one = all.find((each) => each.id === id)
  if (!one) throw new Refused(404, refused['not_here'] ?? '', { code: 'not_here' })
  return one
}

/** Loads something from the server; a sign-in that has ended leads back to the gate. */
export function useLoaded<T>(load: () => Promise<T>): Loaded<T> {
  const [value, setValue] = useState<T>()
  const [failed, setFailed] = useState<string>()
  const [turn, setTurn] = useState(0)
  useEffect(() => {
    let wanted = true
    load().then(
      (loaded) => wanted && setValue(() => loaded),
      (error: unknown) => {
        if (error instanceof Refused && error.status === 401) void look()
        if (wanted) setFailed(say(error))
      },
    )
    return () => void (wanted = false)
  }, [turn])
  return { value, failed, again: () => setTurn(turn + 1) }
}

/** Does something, once at a time, and tells why it was not done: in words of its own where there are any. */
export function useDoing(words: (error: unknown) => string | undefined = () => undefined) {
  const [failed, setFailed] = useState<string>()
  const [doing, setDoing] = useState(false)
  /** Where something is missing that is told instead. */
  const run = async (what: () => Promise<unknown>, missing?: string | false) => {
    if (missing) return setFailed(missing)
    setDoing(true)
    setFailed(undefined)
    try {
      await what()
    } catch (error) {
      setFailed(words(error) ?? say(error))
    } finally {
      setDoing(false)
    }
  }
  return { failed, doing, run }
}
