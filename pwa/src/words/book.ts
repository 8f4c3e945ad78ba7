import { book as english } from './en/book'
import { book as spanish } from './es/book'
import { inLanguage } from './language'

export const book = inLanguage(english, spanish)
