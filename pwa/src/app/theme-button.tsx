import { words } from '../words/frame'
import { chooseTheme, theme, themes } from './theme'
import './theme-button.css'

/** Steps through the themes: as the device, light, dark, outdoor. */
export function ThemeButton() {
  const next = themes[(themes.indexOf(theme.value) + 1) % themes.length]!
  return (
    <button type="button" class="theme-button" onClick={() => chooseTheme(next)}>
      <span class="visually-hidden">{words.app.theme}: </span>
      <span aria-hidden="true">◐ </span>
      {words.themes[theme.value]}
    </button>
  )
}
