import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { board } from '../../words/class-board'
import type { ClassBoardScene, ClassBoardView } from '../../wire.gen'
import { Preview } from '../class/preview'
import type { DeskProps } from './desk-props'
import type { Lead } from './lead'

/** The scenes of the class in their order: which were compared, which is on, and what can still be moved. */
export function Scenes({ view, lead }: DeskProps) {
  const [shown, show] = useState<ClassBoardScene>()
  return (
    <section class="stack" aria-label={board.set}>
      <h2>{board.set}</h2>
      <ol class="scene-list">
        {view.scenes.map((scene, at) => (
          <li key={scene.id} aria-current={scene.id === view.scene?.id ? 'step' : undefined}>
            <p>
              <strong>{board.numbered(scene.number, scene.title)}</strong> <span class="small scene-standing">{standing(scene, view)}</span>
            </p>
            {scene.note && <p class="small soft">{scene.note}</p>}
            <div class="row">
              <Button look="quiet" onClick={() => show(scene)}>
                {board.look}
              </Button>
              <Move scene={scene} at={at} view={view} lead={lead} />
              <GoTo scene={scene} view={view} lead={lead} />
            </div>
          </li>
        ))}
      </ol>
      {shown && (
        <Dialog title={shown.title} close={() => show(undefined)}>
          <Preview shown={shown} />
        </Dialog>
      )}
    </section>
  )
}

function standing(scene: ClassBoardScene, view: ClassBoardView): string {
  if (scene.id === view.scene?.id && view.step !== 'ended') return board.now
  if (scene.revealed) return board.seen
  if (view.pace === 'self') return ''
  return scene.look_s ? board.lookS(scene.look_s) : board.lookFree
}

interface OneProps {
  scene: ClassBoardScene
  view: ClassBoardView
  lead: Lead
}

/** Goes to a scene out of turn: in a led class to look at it, in a self-paced one to compare it. */
function GoTo({ scene, view, lead }: OneProps) {
  const self = view.pace === 'self'
  const can = view.step !== 'gather' && view.step !== 'ended' && scene.id !== view.scene?.id && (self ? scene.spread : !scene.revealed)
  if (!can) return null
  return (
    <Button look="quiet" onClick={() => void lead.do({ kind: 'stepped', to: self ? 'compare' : 'watch', scene: scene.id })}>
      {self ? board.toCompare : board.toScene}
    </Button>
  )
}

function Move({ scene, at, view, lead }: OneProps & { at: number }) {
  if (view.step === 'ended') return null
  const order = view.scenes.map(({ id }) => id)
  const swap = (by: number) => {
    const next = order.with(at, order[at + by]!).with(at + by, scene.id)
    void lead.do({ kind: 'scenes_reordered', order: next })
  }
  return (
    <>
      <Button look="quiet" disabled={at === 0} aria-label={board.moveUp(scene.title)} onClick={() => swap(-1)}>
        {board.up}
      </Button>
      <Button look="quiet" disabled={at === order.length - 1} aria-label={board.moveDown(scene.title)} onClick={() => swap(1)}>
        {board.down}
      </Button>
    </>
  )
}
