import { Choices } from '../../ui/choices'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { SIDE_WORDS, type Side } from '../../wire.gen'
import type { LookAt } from './looks'
import { all, look, setLook } from './state'

const unsure = 'cannot_tell'

/** What is around the smoke: wind, water, what was just opened or shut. */
export function Context() {
  const now = look.value
  if (!now) return null
  return (
    <details class="context">
      <summary>{sizeUp.context}</summary>
      <div class="stack">
        <Wind now={now} />
        <h3 class="label">{sizeUp.water}</h3>
        <Choices
          label={sizeUp.water}
          choices={[
            { value: 'yes', name: trade.yes },
            { value: 'no', name: trade.no },
            { value: unsure, name: trade.cannotTell },
          ]}
          chosen={now.water === undefined ? undefined : now.water ? 'yes' : 'no'}
          choose={(said) => setLook({ ...now, water: said === unsure ? undefined : said === 'yes' })}
        />
        <h3 class="label">{sizeUp.changed}</h3>
        <Changed now={now} />
      </div>
    </details>
  )
}

function Wind({ now }: { now: LookAt }) {
  const winds = Object.entries(sizeUp.winds).map(([value, name]) => ({ value, name }))
  return (
    <>
      <h3 class="label">{sizeUp.windMS}</h3>
      <Choices
        label={sizeUp.windMS}
        columns={2}
        choices={winds}
        chosen={now.windMS?.toString()}
        choose={(speed) => setLook({ ...now, windMS: Number(speed) })}
      />
      <h3 class="label">{sizeUp.windFrom}</h3>
      <Choices<Side>
        label={sizeUp.windFrom}
        columns={4}
        choices={SIDE_WORDS.map((value) => ({ value, name: trade.sides[value] }))}
        chosen={now.windFrom}
        choose={(windFrom) => setLook({ ...now, windFrom })}
      />
    </>
  )
}

function Changed({ now }: { now: LookAt }) {
  const toggle = (id: string) => {
    const without = now.changed.filter((one) => one !== id)
    setLook({ ...now, changed: without.length < now.changed.length ? without : [...without, id] })
  }
  return (
    <div class="choices choices-2">
      {all.value.map(({ id, name }) => (
        <button
          key={id}
          type="button"
          class="choice"
          aria-pressed={now.changed.includes(id)}
          onClick={() => toggle(id)}
        >
          <span class="choice-name">{name}</span>
        </button>
      ))}
    </div>
  )
}
