/** What the Size-up screen says. */
export const sizeUp = {} as const
