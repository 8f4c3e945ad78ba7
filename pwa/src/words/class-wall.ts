import { wall as english } from './en/class-wall'
import { wall as spanish } from './es/class-wall'
import { inLanguage } from './language'

export const wall = inLanguage(english, spanish)
