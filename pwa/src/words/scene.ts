import { scene as english } from './en/scene'
import { scene as spanish } from './es/scene'
import { inLanguage } from './language'

export const scene = inLanguage(english, spanish)
