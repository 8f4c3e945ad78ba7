import { signal } from '@preact/signals'

// Whether the browser will keep what is written here. Some erase a site's data when
// it was not opened for a while: WebKit after seven days without a visit, installed
// web apps excepted (https://webkit.org/blog/10218/full-third-party-cookie-blocking-and-more/,
// from memory, to be confirmed); all may when room runs short, unless asked not to
// (https://storage.spec.whatwg.org/#persistence).

export type Keeping = 'unknown' | 'for_good' | 'may_erase'

export const keeping = signal<Keeping>('unknown')
/** Bytes used and free for this site, where the browser says. */
export const room = signal<{ used: number; free: number } | undefined>(undefined)

interface InstallPrompt extends Event {
  prompt(): Promise<unknown>
}
/** Set where the browser offers to install. */
export const installable = signal<InstallPrompt | undefined>(undefined)

export function watchInstall(): void {
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault()
    installable.value = event as InstallPrompt
  })
  addEventListener('appinstalled', () => {
    installable.value = undefined
    void look()
  })
}

/** Asks the browser how it stands. */
export async function look(): Promise<void> {
  const installed = matchMedia('(display-mode: standalone)').matches
  const persisted = await navigator.storage?.persisted?.()
  keeping.value = installed || persisted ? 'for_good' : 'may_erase'
  const { usage = 0, quota } = (await navigator.storage?.estimate?.()) ?? {}
  if (quota !== undefined) room.value = { used: usage, free: Math.max(0, quota - usage) }
}
