import { computed, signal } from '@preact/signals'

/** A new version has been downloaded and waits. */
export const updateWaits = signal(false)

/** An item or a sketch is open: nothing may interrupt it. */
export const busy = signal(false)

/** A new version may be offered now. */
export const updateOffered = computed(() => updateWaits.value && !busy.value)

let waiting: ServiceWorker | undefined

export function offerUpdate(worker: ServiceWorker): void {
  waiting = worker
  updateWaits.value = true
}

/** Switches to the new version and shows it. Only ever called by a press. */
export function takeUpdate(): void {
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true })
  waiting?.postMessage({ type: 'SKIP_WAITING' })
}

/** Clears the busy mark when a screen is left; what it held stays kept on the device. */
export function guardBusy(left: () => void): () => void {
  return () => {
    busy.value = false
    left()
  }
}
