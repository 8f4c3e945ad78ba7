import { effect, signal } from '@preact/signals'

/** The themes a person may choose; auto follows the device between light and dark. */
export const themes = ['auto', 'light', 'dark', 'outdoor'] as const
export type Theme = (typeof themes)[number]

const key = 'lintel.theme'
const night = matchMedia('(prefers-color-scheme: dark)')

export const theme = signal<Theme>(stored())
const deviceIsDark = signal(night.matches)

/** Keeps the page in the chosen theme. Runs once, before the first paint. */
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
    localStorage.setItem(key, next)
  } catch {
    // A browser that keeps nothing still shows the theme until the page closes.
  }
}

function stored(): Theme {
  try {
    const kept = localStorage.getItem(key)
    return themes.find((name) => name === kept) ?? 'auto'
  } catch {
    return 'auto'
  }
}
