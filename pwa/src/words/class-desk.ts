import { desk as english } from './en/class-desk'
import { desk as spanish } from './es/class-desk'
import { inLanguage } from './language'

export const desk = inLanguage(english, spanish)
