import { useMemo, useState } from 'preact/hooks'
import { buildings } from '../../../buildings'
import { Button } from '../../../ui/button'
import { burning } from '../../../words/burning'
import { prop } from '../../../words/prop'
import type { Move } from '../../../wire.gen'
import { TheBench } from '../the-bench'
import { useBench } from '../use-bench'
import { simulated, type BurnLog } from './record'
import { TimelineList } from './timeline-list'

/** The log as a timeline, the simulated box beside it, and the questions of the debrief. */
export function After({ log, another }: { log: BurnLog; another(): void }) {
  const [besides, setBesides] = useState(false)
  return (
    <div class="burn burn-after">
      <div class="stack">
        <h2>{burning.after}</h2>
        <p class="soft">{burning.signedBy(log.signed, log.stopWord)}</p>
        <h3 class="label">{burning.timeline}</h3>
        <TimelineList log={log} />
      </div>
      <div class="stack burn-beside">
        <h3 class="label">{burning.beside}</h3>
        <p class="small soft">{burning.besideNote}</p>
        <div><Button aria-expanded={besides} onClick={() => setBesides(!besides)}>{besides ? burning.hide : burning.burnIt}</Button></div>
        {besides && <Beside log={log} />}
      </div>
      <div class="stack burn-debrief">
        <h3 class="label">{burning.debrief}</h3>
        <ol class="burn-questions">
          {burning.questions.map((question) => <li key={question}>{question}</li>)}
        </ol>
        <div><Button onClick={another}>{burning.another}</Button></div>
      </div>
    </div>
  )
}

const box = buildings[0]!

/** The box of the bench with the same moves at the same times, lit at 0. */
function Beside({ log }: { log: BurnLog }) {
  const moves = useMemo((): Move[] => [
    ...box.loads[0]!.parts.map(({ fuel, kg }) => ({ t_s: 0, fuel, mass_kg: kg, in: box.seat })), ...simulated(log),
  ], [log])
  const { bench, failed, again } = useBench(box, moves)
  if (failed) return <p role="alert">{prop.failed}: {failed}</p>
  return bench ? <TheBench bench={bench} again={again} /> : <p role="status" class="soft">{prop.starting}</p>
}
