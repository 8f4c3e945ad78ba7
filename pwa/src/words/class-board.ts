import { board as english } from './en/class-board'
import { board as spanish } from './es/class-board'
import { inLanguage } from './language'

export const board = inLanguage(english, spanish)
