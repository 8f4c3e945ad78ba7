import { classes as english } from './en/class'
import { classes as spanish } from './es/class'
import { inLanguage } from './language'

export const classes = inLanguage(english, spanish)
