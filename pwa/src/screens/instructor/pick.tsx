interface PickProps<T extends string> {
  label: string
  value: T
  set(value: T): void
  choices: readonly { value: T; name: string }[]
}

/** One out of a list that may be long. */
export function Pick<T extends string>({ label, value, set, choices }: PickProps<T>) {
  return (
    <label class="desk-pick">
      <span class="label">{label}</span>
      <select value={value} onChange={(event) => set(event.currentTarget.value as T)}>
        {choices.map((one) => (
          <option key={one.value} value={one.value}>
            {one.name}
          </option>
        ))}
      </select>
    </label>
  )
}
