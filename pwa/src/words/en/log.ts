/** What the log screen says. */
export const log = {} as const
