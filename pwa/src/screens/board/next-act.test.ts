import { expect, test } from 'vitest'
import type { ClassBoardView, ClassPace, ClassStep } from '../../wire.gen'
import { nextAct } from './next-act'

const scenes = [
  { id: 's1', title: 'One door', revealed: true },
  { id: 's2', title: 'Far window', revealed: false },
]

function at(step: ClassStep, scene?: string, pace: ClassPace = 'led', all = scenes): ClassBoardView {
  return { step, pace, scene: scene ? { id: scene } : null, scenes: all } as unknown as ClassBoardView
}

test('a led class goes from step to step of a scene, then to the first scene not compared', () => {
  expect(nextAct(at('gather'))?.act).toEqual({ kind: 'started' })
  expect(nextAct(at('watch', 's1'))?.act).toEqual({ kind: 'stepped', to: 'commit', scene: 's1' })
  expect(nextAct(at('commit', 's1'))?.act).toEqual({ kind: 'stepped', to: 'compare', scene: 's1' })
  expect(nextAct(at('compare', 's1'))?.act).toEqual({ kind: 'stepped', to: 'cutaway', scene: 's1' })
  expect(nextAct(at('cutaway', 's1'))).toEqual({ name: 'Next scene: Far window', act: { kind: 'stepped', to: 'watch', scene: 's2' } })
})

test('after the last scene nothing comes next by itself, nor after the end', () => {
  expect(nextAct(at('cutaway', 's1', 'led', scenes.slice(0, 1)))).toBeUndefined()
  expect(nextAct(at('ended', 's1'))).toBeUndefined()
})

test('at their own pace there is no next step until something is compared; then it goes back to their pace', () => {
  expect(nextAct(at('commit', undefined, 'self'))).toBeUndefined()
  expect(nextAct(at('cutaway', 's1', 'self'))?.act).toEqual({ kind: 'stepped', to: 'commit' })
})
