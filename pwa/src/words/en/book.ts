/** What the book screen says. */
export const book = {} as const
