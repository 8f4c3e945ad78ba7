// Where choices are kept that a page asks for before the app does (build/boot.ts).

export const themeKey = 'lintel.theme'
export const languageKey = 'lintel.language'
