import type { ComponentChildren } from 'preact'
import './choices.css'

export interface Choice<T> {
  value: T
  name: string
  /** Drawn above the name: a swatch, an arrow. Never the only bearer of meaning. */
  picture?: ComponentChildren
}

interface ChoicesProps<T> {
  label: string
  choices: readonly Choice<T>[]
  chosen: T | undefined
  choose(value: T): void
  /** Columns at most; four is the most a phone held in a glove can tell apart. */
  columns?: 1 | 2 | 3 | 4
  /** Marks a choice given earlier, e.g. at the last look. */
  earlier?: T | undefined
  earlierName?: string
}

/** One answer out of several, as a grid of cells of at least 72 px a side. */
export function Choices<T extends string | number>(props: ChoicesProps<T>) {
  const { label, choices, chosen, choose, columns = 3, earlier, earlierName } = props
  return (
    <div class={`choices choices-${columns}`} role="group" aria-label={label}>
      {choices.map(({ value, name, picture }) => (
        <button
          key={value}
          type="button"
          class="choice"
          aria-pressed={value === chosen}
          onClick={() => choose(value)}
        >
          {picture}
          <span class="choice-name">{name}</span>
          {value === earlier && <small class="choice-earlier">{earlierName}</small>}
        </button>
      ))}
    </div>
  )
}
