import type { ComponentChildren } from 'preact'
import { useErrorBoundary } from 'preact/hooks'
import { words } from '../words/frame'
import { Button } from '../ui/button'

/** Catches a screen that throws: it says what happened and what is kept, never a blank page. */
export function Guard({ children }: { children: ComponentChildren }) {
  const [fault, again] = useErrorBoundary((error: unknown) => console.error(error))
  if (!fault) return <>{children}</>
  return (
    <main id="main" class="page stack">
      <h1>{words.app.stopped}</h1>
      <p role="alert">{words.app.stoppedWhy}</p>
      <div>
        <Button onClick={again}>{words.app.tryAgain}</Button>
      </div>
      <p>
        <a href="/">{words.app.backHome}</a>
      </p>
    </main>
  )
}
