import { useEffect } from 'preact/hooks'
import { place } from '../../app/router'
import { useAwake } from '../../class/awake'
import { token, watchFragment } from '../../class/fragment'
import { keep, kept } from '../../class/keep'
import { Steps } from '../../class/steps'
import { useLive } from '../../class/use-live'
import { classes } from '../../words/class'
import { wall } from '../../words/class-wall'
import { words } from '../../words/frame'
import { engine } from '../../worker/client'
import { Wall } from './wall'
import './projector.css'

/** The projector: opened by a link without signing in, it never shows a name. */
export default function Projector() {
  useEffect(watchFragment, [])
  const [id] = place.value.rest
  const key = `lintel.projector.${id}`
  const held = token.value ?? kept<string>(key)
  // Made ready while people gather, so that the first scene need not wait for it.
  useEffect(() => void engine.version().catch(() => {}), [])
  useEffect(() => {
    document.title = `${wall.title} · ${words.app.name}`
    if (token.value) keep(key, token.value)
  }, [token.value])
  return (
    <main id="main" class="wall">
      {id && held ? <Follow key={held} id={id} held={held} /> : <Alone said={wall.noToken} />}
    </main>
  )
}

function Alone({ said }: { said: string }) {
  return (
    <div class="wall-alone">
      <h1>{wall.title}</h1>
      <p role="status">{said}</p>
    </div>
  )
}

function Follow({ id, held }: { id: string; held: string }) {
  const { heard, line, now } = useLive(id, async () => ({ role: 'projector', key: held }))
  useAwake()
  const view = heard.projector
  if (line === 'refused') return <Alone said={wall.refused} />
  if (!view) return <Alone said={line === 'away' ? wall.away : classes.joining} />
  return (
    <>
      <header class="wall-head">
        <h1>{view.title}</h1>
        {view.rehearsal && <p>{wall.rehearsal}</p>}
        {view.scene && <p>{classes.scene(view.scene.number, view.scene.of)}</p>}
        <Steps step={view.step} pace={view.pace} />
      </header>
      {line === 'away' && (
        <p class="wall-away" role="status">
          {wall.away}
        </p>
      )}
      <Wall view={view} door={heard.door} now={now} />
    </>
  )
}
