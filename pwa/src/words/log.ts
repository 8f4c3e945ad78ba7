import { log as english } from './en/log'
import { log as spanish } from './es/log'
import { inLanguage } from './language'

export const log = inLanguage(english, spanish)
