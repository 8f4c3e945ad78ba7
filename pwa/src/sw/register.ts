import { offerUpdate } from './update'
import { offlineUse } from '../local/status'

/** Installs the offline copy of the app and watches for a newer one. */
export async function register(): Promise<void> {
  if (!isSecureContext) return void (offlineUse.value = 'plain-http')
  if (!('serviceWorker' in navigator)) return void (offlineUse.value = 'unsupported')
  const registration = await navigator.serviceWorker.register('/sw.js')
  if (registration.waiting && registration.active) offerUpdate(registration.waiting)
  registration.addEventListener('updatefound', () => watch(registration))
  await navigator.serviceWorker.ready
  offlineUse.value = 'ready'
}

/** A worker installed beside an active one is an update; the first one is not. */
function watch(registration: ServiceWorkerRegistration): void {
  const worker = registration.installing
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && registration.active) offerUpdate(worker)
  })
}
