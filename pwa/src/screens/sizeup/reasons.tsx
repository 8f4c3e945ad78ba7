import { sizeUp } from '../../words/size-up'
import { sourceName } from '../../words/sources'
import { isTold } from '../../words/stages'
import type { Evidence, Finding } from '../../wire.gen'
import { byAnswer, type ReasonGroup } from './reason-groups'

/** Reasons shown of a group before one asks for more: the heaviest, which come first. Chosen by us. */
const mostAtOnce = 3

/** The rules that spoke, for and against, each under what it speaks on and with its source. */
export function Reasons({ read }: { read: Finding }) {
  const { because, against } = read
  if (because.length === 0 && against.length === 0) return null
  return (
    <>
      <Side title={sizeUp.because} evidence={because} lead={sizeUp.speaksFor} />
      <Side
        title={sizeUp.against}
        evidence={against}
        lead={sizeUp.speaksAgainst}
        empty={isTold(read) ? sizeUp.noAgainst : undefined}
      />
      <p class="small soft weight-legend">
        <Weight weight={0.5} />
        <Weight weight={2} />
        {sizeUp.weightLegend}
      </p>
    </>
  )
}

interface SideProps {
  title: string
  evidence: readonly Evidence[]
  lead(answer: string): string
  empty?: string | undefined
}

function Side({ title, evidence, lead, empty }: SideProps) {
  if (evidence.length === 0 && !empty) return null
  return (
    <section class="stack">
      <h3>{title}</h3>
      {evidence.length === 0 && <p class="small soft">{empty}</p>}
      {byAnswer(evidence).map((group) => (
        <Group key={group.answer ?? ''} group={group} lead={lead} />
      ))}
    </section>
  )
}

function Group({ group: { answer, evidence }, lead }: { group: ReasonGroup; lead(answer: string): string }) {
  return (
    <div class="stack">
      {answer && <h4 class="label">{lead(answer)}</h4>}
      <List evidence={evidence.slice(0, mostAtOnce)} />
      {evidence.length > mostAtOnce && (
        <details class="more">
          <summary>{sizeUp.moreReasons(evidence.length - mostAtOnce)}</summary>
          <List evidence={evidence.slice(mostAtOnce)} />
        </details>
      )}
    </div>
  )
}

function List({ evidence }: { evidence: readonly Evidence[] }) {
  return (
    <ul class="reasons">
      {evidence.map(({ rule, text, weight, source }) => (
        <li key={rule} class="reason">
          <Weight weight={weight} />
          <p>{text}</p>
          <p class="small soft">
            {sizeUp.source}: {sourceName(source)}
          </p>
        </li>
      ))}
    </ul>
  )
}

/** A rule's weight as one to four strokes: an ordinal mark, since nobody reads log-odds. Steps chosen by us. */
function Weight({ weight }: { weight: number }) {
  const strokes = Math.min(4, Math.max(1, Math.round(Math.abs(weight) * 2)))
  return (
    <svg class="weight" width="26" height="18" viewBox="0 0 26 18" role="img" aria-label={sizeUp.weight(strokes)}>
      {[0, 1, 2, 3].map((n) => (
        <path key={n} d={`M${3 + n * 7} 16V${n < strokes ? 2 : 13}`} class={n < strokes ? 'weight-on' : ''} />
      ))}
    </svg>
  )
}
