/** A small value that outlives the page; undefined takes it away. */
export function keep(key: string, value: unknown): void {
  try {
    if (value === undefined) localStorage.removeItem(key)
    else localStorage.setItem(key, JSON.stringify(value))
  } catch {
    // A browser that keeps nothing does without until the page closes.
  }
}

export function kept<T>(key: string): T | undefined {
  try {
    return (JSON.parse(localStorage.getItem(key) ?? 'null') as T | null) ?? undefined
  } catch {
    return undefined // a browser that keeps nothing, or something else's value
  }
}
