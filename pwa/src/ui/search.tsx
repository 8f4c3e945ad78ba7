import './field.css'

interface SearchProps {
  label: string
  query: string
  set(query: string): void
  /** How many were found, in words. */
  found: string
}

/** A field that filters the list below it as one types. */
export function Search({ label, query, set, found }: SearchProps) {
  return (
    <label class="search">
      <span class="label">{label}</span>
      <input type="search" value={query} onInput={(event) => set(event.currentTarget.value)} autoComplete="off" />
      <span class="small soft" role="status">
        {found}
      </span>
    </label>
  )
}
