import type { Act } from '../../class/desk'
import { board } from '../../words/class-board'
import type { ClassBoardView } from '../../wire.gen'

/** An act with what its button says. */
export interface NamedAct {
  name: string
  act: Act
}

/** The step that comes next by itself; none after the last scene. */
export function nextAct(view: ClassBoardView): NamedAct | undefined {
  const scene = view.scene?.id
  if (view.step === 'gather') return { name: board.start, act: { kind: 'started' } }
  if (!scene) return undefined
  switch (view.step) {
    case 'watch':
      return { name: board.toCommit, act: { kind: 'stepped', to: 'commit', scene } }
    case 'commit':
      return { name: board.toCompare, act: { kind: 'stepped', to: 'compare', scene } }
    case 'compare':
      return { name: board.toCutaway, act: { kind: 'stepped', to: 'cutaway', scene } }
    case 'cutaway':
      return view.pace === 'self' ? { name: board.backToOwn, act: { kind: 'stepped', to: 'commit' } } : nextScene(view)
    default:
      return undefined
  }
}

/** The first scene that was not compared yet. */
function nextScene(view: ClassBoardView): NamedAct | undefined {
  const next = view.scenes.find(({ revealed }) => !revealed)
  return next && { name: board.toNext(next.title), act: { kind: 'stepped', to: 'watch', scene: next.id } }
}
