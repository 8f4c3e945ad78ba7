import './one-of.css'

interface OneOfProps<T extends string | number> {
  label: string
  /** How the row stands where it is used. */
  class: string
  of: readonly { value: NoInfer<T>; name: string }[]
  chosen: T
  choose(value: NoInfer<T>): void
}

/** Which of a few is looked at: a row of buttons that changes the view and answers nothing. */
export function OneOf<T extends string | number>({ label, class: row, of, chosen, choose }: OneOfProps<T>) {
  return (
    <div class={row} role="group" aria-label={label}>
      {of.map(({ value, name }) => (
        <button key={value} type="button" class="one-of" aria-pressed={value === chosen} onClick={() => choose(value)}>{name}</button>
      ))}
    </div>
  )
}
