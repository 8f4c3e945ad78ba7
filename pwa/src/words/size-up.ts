import { sizeUp as english } from './en/size-up'
import { sizeUp as spanish } from './es/size-up'
import { inLanguage } from './language'

export const sizeUp = inLanguage(english, spanish)
