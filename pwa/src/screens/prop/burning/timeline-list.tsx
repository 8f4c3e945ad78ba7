import { Button } from '../../../ui/button'
import { burning } from '../../../words/burning'
import { prop } from '../../../words/prop'
import { secondsAfter, type BurnLog } from './record'
import { spellNote } from './spell-note'

interface ListProps { log: BurnLog; newestFirst?: boolean; strike?: (entry: string) => void }

/** What was logged, each with its time since the flame; what was struck out stays to be seen. */
export function TimelineList({ log, newestFirst, strike }: ListProps) {
  const entries = newestFirst ? log.entries.toReversed() : log.entries
  if (entries.length === 0) return <p class="small soft">{burning.empty}</p>
  return (
    <ol class="burn-list">
      {entries.map((entry) => {
        const [name, clock] = [spellNote(entry.note), prop.clock(secondsAfter(log, entry.at))]
        return (
          <li key={entry.id}>
            <span class="prop-when">{clock}</span>
            <span>{entry.struck ? <><s>{name}</s> {burning.struck}</> : name}</span>
            {strike && !entry.struck && <Button look="quiet" aria-label={burning.strikeLabel(name, clock)} onClick={() => strike(entry.id)}>{burning.strike}</Button>}
          </li>
        )
      })}
    </ol>
  )
}
