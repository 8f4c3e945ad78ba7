import { LookLine } from '../../class/look-line'
import { QR } from '../../class/qr'
import { useAddress } from '../../class/address'
import { WithItem } from '../../class/with-item'
import { wall } from '../../words/class-wall'
import type { ClassDoor, ClassProjectorView, Item } from '../../wire.gen'
import { Looked } from '../class/watch'
import { Behind } from '../drill/reveal'
import { Outcome, Spreads } from './spreads'
import '../drill/drill.css'

interface WallProps {
  view: ClassProjectorView
  door: ClassDoor | undefined
  now(): number
}

/** What the room sees at each step. */
export function Wall({ view, door, now }: WallProps) {
  const { scene, compare } = view
  if (view.step === 'ended') return <Said title={wall.over} text={wall.overWhy} />
  if (view.step === 'gather' || !scene) return <GatherWall view={view} door={door} />
  if (view.step === 'compare') return compare && <Spreads spread={compare} />
  return (
    <WithItem shown={scene}>
      {(item) => (
        <div class="wall-scene">
          {view.step === 'cutaway' ? <Behind key={scene.id} item={item} cutaway /> : <Looked key={scene.id} item={item} />}
          <LookLine from={scene.look_from_ms} until={scene.look_until_ms} now={now} />
          {view.step === 'watch' && <p class="wall-say">{wall.watch}</p>}
          {view.step === 'commit' && <Committing view={view} item={item} />}
          {view.step === 'cutaway' && compare && <Outcome spread={compare} item={item} own={scene.own} />}
        </div>
      )}
    </WithItem>
  )
}


function Committing({ view, item }: { view: ClassProjectorView; item: Item }) {
  return (
    <div class="wall-say">
      <p>{item.question.text}</p>
      <p role="status">
        <strong>{wall.commit}.</strong> {wall.committed(view.committed, view.people)}
      </p>
    </div>
  )
}

function Said({ title, text }: { title: string; text: string }) {
  return (
    <div class="wall-alone">
      <h2>{title}</h2>
      <p>{text}</p>
    </div>
  )
}

/** Before the first scene, and while everyone works at their own pace: how to join, and who many are here. */
function GatherWall({ view, door }: Omit<WallProps, 'now'>) {
  const address = useAddress()
  return (
    <div class="wall-gather">
      {door && !view.locked && <QR text={`${address}/class#${door.token}`} label={wall.codeLabel} />}
      <div class="wall-join">
        <h2>{view.step === 'gather' ? wall.joinTitle : wall.ownPace}</h2>
        {door && !view.locked && (
          <>
            <p>{wall.joinHow}</p>
            <p>{wall.joinType(`${address.replace(/^https?:\/\//, '')}/class`)}</p>
            <p class="wall-code">{door.code}</p>
          </>
        )}
        {view.locked && <p>{wall.locked}</p>}
        <p class="wall-here" role="status">
          {wall.here(view.people)}
        </p>
      </div>
    </div>
  )
}
