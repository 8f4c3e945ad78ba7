import { log } from '../../words/en/log'
import { trade } from '../../words/en/trade'
import { ordinalCues } from '../../words/scales'
import { Dots } from './dots'
import { enough, mean, type OwnRecord, type Tally } from './record'

/** One plot a cue: agreement and bias, and nothing added up into a mark. */
export function Cues({ record }: { record: OwnRecord }) {
  return (
    <section class="stack">
      <h2>{log.perCue}</h2>
      <p class="small soft">{log.perCueWhy}</p>
      {ordinalCues.map((cue) => {
        const tally = record.levels.get(cue)
        return tally && <Level key={cue} name={trade.cues[cue]} tally={tally} />
      })}
      {record.plane.count > 0 && <PlaneCue tally={record.plane} />}
    </section>
  )
}

function Level({ name, tally }: { name: string; tally: Tally }) {
  const lean = mean(tally.off)
  const steps = Math.abs(lean).toFixed(1)
  return (
    <Plot
      name={name}
      tally={tally}
      lean={steps === '0.0' ? log.leansNowhere : lean > 0 ? log.leansHeavy(steps) : log.leansLight(steps)}
      reach={4}
      left={log.lighter}
      right={log.heavier}
    />
  )
}

function PlaneCue({ tally }: { tally: Tally }) {
  const lean = mean(tally.off)
  const share = Math.abs(lean * 100).toFixed(0)
  return (
    <Plot
      name={trade.cues.neutral_plane}
      tally={tally}
      lean={share === '0' ? log.leansNowhere : lean > 0 ? log.leansHigh(share) : log.leansLow(share)}
      reach={0.6}
      left={log.lower}
      right={log.higher}
    />
  )
}

interface PlotProps {
  name: string
  tally: Tally
  lean: string
  reach: number
  left: string
  right: string
}

function Plot({ name, tally, lean, reach, left, right }: PlotProps) {
  const said = [
    log.asItWas(tally.right, tally.count),
    tally.off.length < enough ? log.few : lean,
    ...(tally.cannotTell ? [log.cannotTell(tally.cannotTell)] : []),
  ].join('; ')
  return (
    <figure class="cue-plot">
      <figcaption>
        <h3>{name}</h3>
        <p class="small soft">{said}</p>
      </figcaption>
      <Dots off={tally.off} reach={reach} label={log.plotOf(name, said)} left={left} right={right} />
    </figure>
  )
}

/** Flow, stage, regime and predictions: how often they were as it was. */
export function Calls({ record }: { record: OwnRecord }) {
  if (record.calls.size === 0) return null
  const { sure } = record
  const percent = (share: number) => Math.round(share * 100)
  return (
    <section class="stack">
      <h2>{log.calls}</h2>
      <dl class="calls">
        {[...record.calls].map(([kind, tally]) => (
          <div key={kind}>
            <dt>{log.call[kind]}</dt>
            <dd>{log.asItWas(tally.right, tally.count)}</dd>
          </div>
        ))}
      </dl>
      {sure.length >= enough && (
        <>
          <h3>{log.confidence}</h3>
          <p>
            {log.sureAndRight(
              percent(mean(sure.map(({ confidence }) => confidence))),
              percent(mean(sure.map(({ right }) => (right ? 1 : 0)))),
              sure.length,
            )}
          </p>
        </>
      )}
    </section>
  )
}
