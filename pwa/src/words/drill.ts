import { drill as english } from './en/drill'
import { drill as spanish } from './es/drill'
import { inLanguage } from './language'

export const drill = inLanguage(english, spanish)
