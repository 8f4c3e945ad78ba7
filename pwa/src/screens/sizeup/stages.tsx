import { sizeUp } from '../../words/en/size-up'
import { trade } from '../../words/en/trade'
import { named } from './report'
import { REGIME_WORDS, STAGE_WORDS, type Finding } from '../../wire.gen'

/** The stages and the regime, each with the weight of the signs that were seen. */
export function Stages({ read }: { read: Finding }) {
  const stages = STAGE_WORDS.map((stage) => ({ stage, share: read.stage[stage] ?? 0 }))
  return (
    <figure class="stack">
      <table class="shares">
        <caption class="visually-hidden">{sizeUp.stagesCaption}</caption>
        <tbody>
          {stages.map(({ stage, share }) => (
            <Share key={stage} name={trade.stages[stage]} share={share} within={named(read) && read.set.includes(stage)} />
          ))}
        </tbody>
      </table>
      <h3 class="label">{sizeUp.regime}</h3>
      <table class="shares">
        <tbody>
          {REGIME_WORDS.map((regime) => (
            <Share key={regime} name={trade.regimes[regime]} share={read.regime[regime] ?? 0} within={false} />
          ))}
        </tbody>
      </table>
      <figcaption class="small soft">{sizeUp.stagesCaption}</figcaption>
    </figure>
  )
}

function Share({ name, share, within }: { name: string; share: number; within: boolean }) {
  const percent = Math.round(share * 100)
  return (
    <tr class={within ? 'share share-within' : 'share'}>
      <th scope="row">{name}</th>
      <td class="share-bar">
        <svg width="100%" height="10" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
          <rect width={Math.max(0.5, percent)} height="10" />
        </svg>
      </td>
      <td class="share-number">{percent} %</td>
    </tr>
  )
}
