/** The mark of Lintel: an opening under its lintel, smoke in its upper part, the neutral plane across it. */
export function Mark({ size = 28 }: { size?: number }) {
  return (
    <svg width={size} height={size} viewBox="3 4 26 24" aria-hidden="true" focusable="false">
      <path d="M9.6 9.4h12.8v8.2c-1.5.9-2.6.1-3.4-1.2-1-1.6-2.5-1.9-3.9-.5-1.6 1.6-3.6 2.2-5.5.3z" fill="var(--smoke)" />
      <path d="M9.6 20.4h12.8" stroke="var(--accent)" stroke-width="1.3" />
      <path d="M4.6 5.8h22.8v3.8H4.6zM7.2 9.6h2.4v15.2H7.2zM22.4 9.6h2.4v15.2h-2.4zM4.6 24.8h22.8v1.8H4.6z" fill="currentColor" />
    </svg>
  )
}
