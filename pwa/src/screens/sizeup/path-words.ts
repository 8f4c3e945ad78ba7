import { spokenWithin } from '../../words/names'
import { sizeUp } from '../../words/size-up'
import type { Finding } from '../../wire.gen'

/** The flow path in words, as one would say it: "in by the back door, through the hall, out by the front door". */
export function spellPath({ path, openings }: Pick<Finding, 'path' | 'openings'>): string {
  const [first, last] = [path[0], path.at(-1)]
  if (first === undefined || last === undefined) return ''
  if (path.length === 1) return takesIn(openings[first]?.role) ? sizeUp.pathIn(plain(first)) : sizeUp.pathOut(plain(first))
  const between = path.slice(1, -1).map(plain).join(', ')
  const through = between ? [sizeUp.pathThrough(between)] : []
  if (first === last) return [sizeUp.pathBoth(plain(first)), ...through].join(', ')
  return [sizeUp.pathIn(plain(first)), ...through, sizeUp.pathOut(plain(last))].join(', ')
}

const takesIn = (role: string | undefined) => role === 'in'

/** An id within a sentence: "front_door" is "front door"; the unknown inside of a sketch is "inside". */
function plain(id: string): string {
  return /^inside_\d+$/.test(id) ? sizeUp.inside : spokenWithin(id)
}
