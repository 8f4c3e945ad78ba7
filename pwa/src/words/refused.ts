import { refused as english } from './en/refused'
import { refused as spanish } from './es/refused'
import { inLanguage } from './language'

export const refused: Partial<Record<string, string>> = inLanguage(english, spanish)
