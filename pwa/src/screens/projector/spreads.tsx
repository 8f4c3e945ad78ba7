import { Spread } from '../../class/spread'
import { replyOf } from '../../class/stops'
import { wall } from '../../words/class-wall'
import { drill } from '../../words/drill'
import type { Ask, ClassAskSpread, ClassSpread, Item, Own } from '../../wire.gen'
import { askName, spellReply, spellTruth } from '../../words/spell-reply'
import { Why } from '../class/why'

/** How the class read the scene, one rail under the other; of each the two readings furthest apart. */
export function Spreads({ spread }: { spread: ClassSpread }) {
  const asks = spread.asks.map(({ ask }) => ask)
  const narrow = asks.every(({ kind }) => kind !== 'level')
  return (
    <section class={narrow ? 'wall-spreads wall-beside' : 'wall-spreads'} aria-label={wall.compare}>
      {spread.asks.map((said) => (
        <article key={said.ask.id} class="wall-spread">
          <div>
            <h2>{askName(said.ask, asks)}</h2>
            <Apart said={said} />
          </div>
          <Spread said={said} name={askName(said.ask, asks)} />
        </article>
      ))}
    </section>
  )
}

function Apart({ said: { ask, apart } }: { said: ClassAskSpread }) {
  if (!apart) return null
  const said = (n: number, value: string) => wall.said(n, spellReply(ask, replyOf(ask, value)))
  return (
    <p class="wall-apart">
      {wall.apart} <span class="wall-said">{said(apart.low_n, apart.low)},</span> <span class="wall-said">{said(apart.high_n, apart.high)}</span>
    </p>
  )
}

/** Beside the opened wall: what was true, how many read it so, and why. */
export function Outcome({ spread, item, own }: { spread: ClassSpread; item: Item; own: Own | undefined }) {
  const asks = spread.asks.map(({ ask }) => ask)
  return (
    <section class="wall-outcome" aria-label={wall.cutaway} tabIndex={0}>
      <dl>
        {spread.asks.map((said) => (
          <div key={said.ask.id}>
            <dt>{askName(said.ask, asks)}</dt>
            <dd>
              <strong>{trueWords(said.ask, said)}</strong>
              <span class="wall-apart">{said.doubted ? wall.doubted : wall.asItWas(said.right, said.judged)}</span>
            </dd>
          </div>
        ))}
      </dl>
      <Why item={item} own={own} answer={undefined} />
    </section>
  )
}

function trueWords(ask: Ask, { truth = [] }: ClassAskSpread): string {
  return truth.map((reply) => spellTruth(ask, reply)).join(` ${drill.or} `)
}
