import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { words } from '../words/frame'
import { Button } from '../ui/button'
import { Guard } from './guard'

type Module = { default: ComponentType }
type Load = () => Promise<Module>

const loaded = new Map<Load, ComponentType>()

/** Shows a screen whose code comes when it is first opened. */
export function Lazy({ load }: { load: Load }) {
  const [Screen, setScreen] = useState<ComponentType | undefined>(() => loaded.get(load))
  const [failed, setFailed] = useState(false)
  const [attempt, setAttempt] = useState(0)

  useEffect(() => {
    let current = true
    setFailed(false)
    setScreen(() => loaded.get(load))
    load().then(
      (module) => {
        loaded.set(load, module.default)
        if (current) setScreen(() => module.default)
      },
      () => current && setFailed(true),
    )
    return () => {
      current = false
    }
  }, [load, attempt])

  if (Screen)
    return (
      <Guard>
        <Screen />
      </Guard>
    )
  if (failed) return <NotLoaded again={() => setAttempt(attempt + 1)} />
  return <main id="main" class="page" aria-busy="true" />
}

function NotLoaded({ again }: { again: () => void }) {
  return (
    <main id="main" class="page stack">
      <h1>{words.app.notLoaded}</h1>
      <p role="alert">{words.app.notLoadedWhy}</p>
      <div>
        <Button onClick={again}>{words.app.tryAgain}</Button>
      </div>
    </main>
  )
}
