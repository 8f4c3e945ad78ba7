import { Button } from '../../ui/button'
import { prop } from '../../words/prop'
import type { Bench } from './bench'
import { differences } from './differences'
import type { Now, View } from './view'

/** Both fires in numbers, and which of them is kept. */
export function Compare({ bench, now, second, selected }: { bench: Bench; now: Now; second: View; selected: string | undefined }) {
  const { scenario, small } = bench.building
  const opening = scenario.openings.find(({ id }) => id === selected)
  return (
    <section class="prop-compare" aria-label={prop.twoFires}>
      <table>
        <thead>
          <tr>
            <th scope="col">{prop.quantity}</th>
            <th scope="col" class="prop-first">{prop.fires.first}</th>
            <th scope="col" class="prop-second">{prop.otherwiseFrom(prop.clock(now.branchS ?? 0))}</th>
            <th scope="col">{prop.difference}</th>
          </tr>
        </thead>
        <tbody>
          {differences(scenario, opening, now.first.frame, second.frame).map((line) => (
            <tr key={line.name}>
              <th scope="row">{line.name}</th>
              <td>{line.first}</td>
              <td>{line.second}</td>
              <td><strong>{line.between}</strong></td>
            </tr>
          ))}
        </tbody>
      </table>
      {small && <p class="small soft">{prop.scaleCompare}</p>}
      <div class="prop-keep" role="group" aria-label={prop.keep}>
        <Button onClick={() => bench.keep('first')}>{prop.keepFirst}</Button>
        <Button onClick={() => bench.keep('second')}>{prop.keepSecond}</Button>
      </div>
    </section>
  )
}
