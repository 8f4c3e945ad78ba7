import { trade as english } from './en/trade'
import { trade as spanish } from './es/trade'
import { inLanguage } from './language'

export const trade = inLanguage(english, spanish)
