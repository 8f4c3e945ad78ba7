import { prop as english } from './en/prop'
import { prop as spanish } from './es/prop'
import { inLanguage } from './language'

export const prop = inLanguage(english, spanish)
