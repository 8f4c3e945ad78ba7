import { sizeUp } from '../../words/size-up'
import { capital } from '../../words/sentence'
import { spoken } from '../../words/names'
import { isTold, spellNames } from '../../words/stages'
import type { Evidence, Finding } from '../../wire.gen'
import { byAnswer, type ReasonGroup } from './reason-groups'
import { seenFor } from './reason-seen'
import { sourcesOf } from './reason-sources'
import { all, look } from './state'

/** Reasons shown of a group before one asks for more: the heaviest, which come first. Chosen by us. */
const mostAtOnce = 2
/** Answers whose reasons stand open on a side; the lighter ones are folded. Chosen by us. */
const mostAnswers = 3

/** The rules that spoke, for and against, each under what it speaks on; their sources stand once, below. */
export function Reasons({ read }: { read: Finding }) {
  const { because, against } = read
  const cited = sourcesOf([...because, ...against])
  if (because.length === 0 && against.length === 0) return null
  return (
    <>
      <Side title={sizeUp.because} evidence={because} lead={sizeUp.speaksFor} cited={cited} />
      <Side
        title={sizeUp.against}
        evidence={against}
        lead={sizeUp.speaksAgainst}
        cited={cited}
        empty={isTold(read) ? sizeUp.noAgainst : undefined}
      />
      <p class="small soft weight-legend">
        <Weight weight={0.5} />
        <Weight weight={2} />
        {sizeUp.weightLegend}
      </p>
      <details class="more small">
        <summary>{sizeUp.sources(cited.length)}</summary>
        <ol class="reason-sources">
          {cited.map((source) => (
            <li key={source}>{capital(source)}</li>
          ))}
        </ol>
      </details>
    </>
  )
}

interface SideProps {
  title: string
  evidence: readonly Evidence[]
  lead(answer: string): string
  /** Every source once, in the order of the numbers that stand beside the reasons. */
  cited: readonly string[]
  empty?: string | undefined
}

function Side({ title, evidence, empty, ...rest }: SideProps) {
  if (evidence.length === 0 && !empty) return null
  const groups = byAnswer(evidence)
  const [open, folded] = [groups.slice(0, mostAnswers), groups.slice(mostAnswers)]
  return (
    <section class="stack">
      <h3>{title}</h3>
      {evidence.length === 0 && <p class="small soft">{empty}</p>}
      <Groups groups={open} {...rest} />
      {folded.length > 0 && (
        <details class="more">
          <summary>{sizeUp.alsoOn(spellNames(folded.map(({ answer }) => answer ?? sizeUp.others), sizeUp.and))}</summary>
          <Groups groups={folded} {...rest} />
        </details>
      )}
    </section>
  )
}

type GroupProps = Pick<SideProps, 'lead' | 'cited'>

function Groups({ groups, ...rest }: GroupProps & { groups: readonly ReasonGroup[] }) {
  return (
    <div class="stack">
      {groups.map((group) => (
        <Group key={group.answer ?? ''} group={group} {...rest} />
      ))}
    </div>
  )
}

function Group({ group: { answer, evidence }, lead, cited }: GroupProps & { group: ReasonGroup }) {
  return (
    <div class="reason-group">
      {answer && <h4 class="label">{lead(answer)}</h4>}
      <List evidence={evidence.slice(0, mostAtOnce)} cited={cited} />
      {evidence.length > mostAtOnce && (
        <details class="more">
          <summary>{sizeUp.moreReasons(evidence.length - mostAtOnce)}</summary>
          <List evidence={evidence.slice(mostAtOnce)} cited={cited} />
        </details>
      )}
    </div>
  )
}

const nameOf = (id: string): string => all.value.find((one) => one.id === id)?.name ?? spoken(id)

/** A line for what was seen, and beneath it what that says. */
function List({ evidence, cited }: { evidence: readonly Evidence[]; cited: readonly string[] }) {
  return (
    <ul class="reasons">
      {evidence.map((one) => (
        <li key={one.rule} class="reason">
          <Weight weight={one.weight} />
          <p class="reason-seen">{capital(seenFor(one, look.value?.ratings ?? {}, nameOf))}</p>
          <p class="reason-says small">
            {one.text} <Cites numbers={sourcesOf([one]).map((source) => cited.indexOf(source) + 1)} />
          </p>
        </li>
      ))}
    </ul>
  )
}

/** The numbers of a reason's sources in the list below. */
function Cites({ numbers }: { numbers: readonly number[] }) {
  return (
    <span class="cites">
      <span aria-hidden="true">[{numbers.join(', ')}]</span>
      <span class="visually-hidden">{sizeUp.cites(numbers.join(', '))}</span>
    </span>
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
