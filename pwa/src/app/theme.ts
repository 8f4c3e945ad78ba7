import { effect, signal } from '@preact/signals'
import { themeKey } from '../kept-keys'

/** The themes a person may choose; auto follows the device between light and dark. */
export const themes = ['auto', 'light', 'dark', 'outdoor'] as const
export type Theme = (typeof themes)[number]

const night = matchMedia('(prefers-color-scheme: dark)')

export const theme = signal<Theme>(stored())
const deviceIsDark = signal(night.matches)

/** Keeps the page in the chosen theme. */
export function followTheme(): void {
  night.addEventListener('change', () => {
    deviceIsDark.value = night.matches
  })
  effect(() => {
    const shown = theme.value === 'auto' ? (deviceIsDark.value ? 'dark' : 'light') : theme.value
    document.documentElement.dataset['theme'] = shown
  })
}

export function chooseTheme(next: Theme): void {
  theme.value = next
  try {
    localStorage.setItem(themeKey, next)
  } catch {
    // A browser that keeps nothing still shows the theme until the page closes.
  }
}

function stored(): Theme {
  try {
    const kept = localStorage.getItem(themeKey)
    return themes.find((name) => name === kept) ?? 'auto'
  } catch {
    return 'auto'
  }
}
