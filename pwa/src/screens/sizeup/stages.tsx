import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { isCall, isTold, namedStages, spellShare } from '../../words/stages'
import { REGIME_WORDS, STAGE_WORDS, type Finding } from '../../wire.gen'

// A regime that leans less than this from even is not told. Chosen by us.
const leastLean = 0.05

/** Two questions: the stage, and what limits the fire, each with the weight of the signs that were seen. */
export function Stages({ read }: { read: Finding }) {
  const told = isTold(read)
  const leans = told || Math.abs(read.regime.ventilation_limited - 0.5) >= leastLean
  if (!told && !leans) return null
  return (
    <figure class="stack">
      {told && <StageTable read={read} />}
      <h3 class="label">{sizeUp.regime}</h3>
      {leans ? <RegimeTable read={read} /> : <p class="small">{sizeUp.notTold}</p>}
      <figcaption class="small soft">
        <p>{sizeUp.twoQuestions}</p>
        <p>{sizeUp.stagesCaption}</p>
      </figcaption>
    </figure>
  )
}

function StageTable({ read }: { read: Finding }) {
  const named = isCall(read) ? namedStages(read).first : []
  const stages = STAGE_WORDS.filter((stage) => stage !== 'undetermined' || read.stage.undetermined >= 0.01)
  return (
    <>
      <h3 class="label">{sizeUp.stage}</h3>
      <table class="shares">
        <caption class="visually-hidden">{sizeUp.stage}</caption>
        <tbody>
          {stages.map((stage) => (
            <Share
              key={stage}
              name={trade.stages[stage]}
              share={read.stage[stage] ?? 0}
              within={named.includes(stage)}
            />
          ))}
        </tbody>
      </table>
    </>
  )
}

function RegimeTable({ read }: { read: Finding }) {
  return (
    <table class="shares">
      <caption class="visually-hidden">{sizeUp.regime}</caption>
      <tbody>
        {REGIME_WORDS.map((regime) => (
          <Share key={regime} name={trade.regimes[regime]} share={read.regime[regime] ?? 0} within={false} />
        ))}
      </tbody>
    </table>
  )
}

function Share({ name, share, within }: { name: string; share: number; within: boolean }) {
  return (
    <tr class={within ? 'share share-within' : 'share'}>
      <th scope="row">{name}</th>
      <td class="share-bar">
        <svg width="100%" height="10" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
          <rect width={Math.max(0.5, 100 * share)} height="10" />
        </svg>
      </td>
      <td class="share-number">{spellShare(share)}</td>
    </tr>
  )
}
