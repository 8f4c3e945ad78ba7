import { words } from '../words/frame'
import { chooseTheme, theme, themes } from './theme'
import './theme-button.css'

/** Steps through the themes: as the device, light, dark, outdoor. */
export function ThemeButton() {
  const next = themes[(themes.indexOf(theme.value) + 1) % themes.length]!
  return (
    <button type="button" class="theme-button" onClick={() => chooseTheme(next)}>
      <span class="visually-hidden">{words.app.theme}: </span>
      <HalfDisc />
      {words.themes[theme.value]}
    </button>
  )
}

/** Half light, half dark; drawn, as few fonts have it and looking for one holds the first paint up. */
function HalfDisc() {
  return (
    <svg class="theme-disc" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <circle cx="8" cy="8" r="6.2" />
      <path d="M8 1.8a6.2 6.2 0 0 0 0 12.4z" />
    </svg>
  )
}
