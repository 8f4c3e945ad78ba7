import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { capital } from '../../words/sentence'
import type { HazardFinding } from '../../wire.gen'
import { hazardSaid, type HazardStanding } from './hazard-said'

/** In this order: what is flagged stands first, what only was not seen stands last. */
const order: readonly HazardStanding[] = ['flagged', 'some_seen', 'unlooked', 'no_sign']

/** The rapid events. None is ever called low, safe or clear, none has a number, and none is green. */
export function Hazards({ hazards }: { hazards: readonly HazardFinding[] }) {
  const said = hazards.map((hazard) => ({ event: hazard.event, ...hazardSaid(hazard) }))
  return (
    <section class="stack">
      <h3>{sizeUp.hazards}</h3>
      <ul class="hazards">
        {said
          .toSorted((a, b) => order.indexOf(a.standing) - order.indexOf(b.standing))
          .map(({ event, standing, seen, quiet }) => (
            <li key={event} class={standing === 'flagged' ? 'hazard hazard-flagged' : 'hazard'}>
              <strong>{trade.hazards[event]}</strong>
              {standing === 'flagged' && <span class="small">{sizeUp.flagged}</span>}
              {standing === 'some_seen' && <span class="small">{sizeUp.someSeen}</span>}
              {seen.length > 0 && (
                <ul>
                  {seen.map((condition) => (
                    <li key={condition} class="small">
                      {capital(condition)}
                    </li>
                  ))}
                </ul>
              )}
              {quiet.map((note) => (
                <p key={note} class="small soft">
                  {capital(note)}
                </p>
              ))}
            </li>
          ))}
      </ul>
    </section>
  )
}
