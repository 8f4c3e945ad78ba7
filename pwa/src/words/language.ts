import { languageKey } from '../kept-keys'
import type { Like } from './like'

/** The languages of the app, each by its own name. */
export const languages = { en: 'English', es: 'Español' } as const
export type Language = keyof typeof languages

/**
 * The language of this page: the one chosen, else the device's own where we
 * speak it. It stands for as long as the page does: choosing another loads the
 * page anew, so that no screen is half in one and half in the other.
 */
export const language: Language = chosen() ?? (globalThis.navigator?.language?.toLowerCase().startsWith('es') ? 'es' : 'en')

/** Dates and numbers as the device writes them, where it speaks this language; else as the language does. */
export const locale: string = globalThis.navigator?.language?.toLowerCase().startsWith(language) ? navigator.language : language

/** Keeps the choice and loads the page in that language. */
export function chooseLanguage(next: Language): void {
  try {
    localStorage.setItem(languageKey, next)
  } catch {
    // A browser that keeps nothing stays in its own language.
  }
  location.reload()
}

/** The catalogue of this page's language. */
export function inLanguage<T>(english: T, spanish: Like<T>): T {
  return language === 'es' ? (spanish as T) : english
}

/** What was chosen and kept. A thread beside the page has no store: it is named by the page's language. */
function chosen(): Language | undefined {
  try {
    const kept = 'localStorage' in globalThis ? localStorage.getItem(languageKey) : (globalThis as { name?: unknown }).name
    return kept === 'en' || kept === 'es' ? kept : undefined
  } catch {
    return undefined
  }
}
