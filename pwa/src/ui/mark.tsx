/** The mark of Lintel: an opening under its lintel, the neutral plane across it. */
export function Mark({ size = 28 }: { size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      <path d="M3 7h26" stroke="currentColor" stroke-width="4" />
      <path d="M8 7v21M24 7v21M4 28h4M24 28h4" fill="none" stroke="currentColor" stroke-width="2.5" />
      <path d="M10 16c2.4-1.6 3.6 1.6 6 0s3.6 1.6 6 0" fill="none" stroke="var(--accent)" stroke-width="2.5" />
    </svg>
  )
}
