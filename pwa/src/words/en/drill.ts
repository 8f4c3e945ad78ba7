/** What the drill screen says. */
export const drill = {} as const
