import { signal } from '@preact/signals'

/** Where the server stands, as far as this page knows. */
export type Reach = 'unknown' | 'online' | 'offline'

/** What a person is told about syncing. local/sync.ts keeps it. */
export const sync = signal<{ unsynced: number; reach: Reach }>({ unsynced: 0, reach: 'unknown' })

/** The browser refuses to keep anything: a private window, or storage turned off. */
export const keepsNothing = signal(false)

/** The drill that was left open, once the store has been read. */
export const openDrill = signal<{ at: number; of: number } | undefined>(undefined)

/** How many families want to be seen again, once that is known. */
export const dueNow = signal(0)

/**
 * Whether the app can be used with no server: yes once its service worker has
 * everything, no where the page came over plain http, which browsers refuse
 * service workers to.
 */
export type OfflineUse = 'preparing' | 'ready' | 'plain-http' | 'unsupported'
export const offlineUse = signal<OfflineUse>('preparing')
