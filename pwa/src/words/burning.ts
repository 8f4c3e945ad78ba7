import { burning as english } from './en/burning'
import { burning as spanish } from './es/burning'
import { inLanguage } from './language'

export const burning = inLanguage(english, spanish)
