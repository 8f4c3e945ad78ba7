import { useEffect } from 'preact/hooks'

/** Keeps the screen lit while the component is shown, where the browser can: not over plain http. */
export function useAwake(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined
    let wanted = true
    const light = async () => {
      if (document.hidden || !navigator.wakeLock) return
      const got = await navigator.wakeLock.request('screen').catch(() => undefined) // refused, e.g. on a low battery
      if (wanted) lock = got
      else void got?.release()
    }
    void light()
    document.addEventListener('visibilitychange', light)
    return () => {
      wanted = false
      document.removeEventListener('visibilitychange', light)
      void lock?.release()
    }
  }, [])
}
