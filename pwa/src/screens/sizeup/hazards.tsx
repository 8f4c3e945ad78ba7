import { sizeUp } from '../../words/en/size-up'
import { trade } from '../../words/en/trade'
import { capital } from '../../words/scales'
import type { HazardFinding } from '../../wire.gen'

/** The rapid events, flagged ones first. None is ever called low, safe or clear, and none is green. */
export function Hazards({ hazards }: { hazards: readonly HazardFinding[] }) {
  const ordered = hazards.toSorted((a, b) => Number(b.flagged) - Number(a.flagged) || b.probability - a.probability)
  return (
    <section class="stack">
      <h3>{sizeUp.hazards}</h3>
      <ul class="hazards">
        {ordered.map((hazard) => (
          <li key={hazard.event} class={hazard.flagged ? 'hazard hazard-flagged' : 'hazard'}>
            <strong>{trade.hazards[hazard.event]}</strong>
            {hazard.flagged && <span class="small">{sizeUp.flagged}</span>}
            {hazard.conditions.length === 0 && <span class="small">{sizeUp.notFlagged}</span>}
            {hazard.conditions.length > 0 && (
              <ul>
                {hazard.conditions.map((condition) => (
                  <li key={condition} class="small">
                    {capital(condition)}
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}
