import { words as english } from './en/frame'
import { words as spanish } from './es/frame'
import { inLanguage } from './language'

export type { ScreenName } from './en/frame'

/** What the frame around every screen says, and what the shared parts say. */
export const words = inLanguage(english, spanish)
