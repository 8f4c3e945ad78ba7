import type { ComponentChildren } from 'preact'
import type { ScreenName } from '../../words/frame'

// Small line drawings in the manner of a building section, 48 by 32.
const drawings: Record<ScreenName, ComponentChildren> = {
  // A facade with one door, smoke in its upper part.
  sizeUp: (
    <>
      <path d="M4 30V8h40v22M18 30V13h12v17" />
      <path class="glyph-ember" d="M14 10c3-3 6 1 9-1s6 1 9-2M19 18c2-1.5 3.5 1.5 5.5 0s3.5 1.5 5.5 0" />
    </>
  ),
  // Four compartments, a hatch lifted.
  prop: (
    <>
      <path d="M8 30V6h14M30 6h10v24H8M8 18h12M28 18h12M24 30v-5M24 6v6" />
      <path class="glyph-ember" d="M22 6l6-5M14 28c-2-4 2-4 1-7 4 3 4 6 1 7z" />
    </>
  ),
  // A rail of five stops, one chosen.
  drill: (
    <>
      <path d="M4 18h40M4 13v10M14 13v10M24 13v10M34 13v10M44 13v10" />
      <path class="glyph-ember" d="M34 6v20M30 6h8" />
    </>
  ),
  // One picture on the wall, and those who look at it.
  class: (
    <>
      <path d="M9 19V4h30v15M4 19h40M21 19v-9h6v9" />
      <path class="glyph-ember" d="M8 27v.01M16 27v.01M24 27v.01M32 27v.01M40 27v.01" />
    </>
  ),
  // An open book with a ribbon.
  book: (
    <>
      <path d="M24 8C18 4 10 4 5 6v21c5-2 13-2 19 2 6-4 14-4 19-2V6c-5-2-13-2-19 2zM24 8v21" />
      <path class="glyph-ember" d="M34 5v11l-2.5-2L29 16V5.5" />
    </>
  ),
  // Dots along a line: one's own readings about the truth.
  log: (
    <>
      <path d="M4 16h40M24 5v22" />
      <path class="glyph-ember" d="M15 12v.01M27 20v.01M31 12v.01M21 20v.01M36 20v.01" />
    </>
  ),
}

/** The drawing beside a screen's name. */
export function Glyph({ name }: { name: ScreenName }) {
  return (
    <svg class="glyph" viewBox="0 0 48 32" aria-hidden="true">
      {drawings[name]}
    </svg>
  )
}
