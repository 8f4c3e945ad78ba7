import { expect, test } from 'vitest'
import type { ClassBoardPerson, ClassBoardView } from '../../wire.gen'
import { standing } from './people'

const scenes = ['s1', 's2', 's3'].map((id) => ({ id }))
const view = (step: string, pace: string, scene?: string) => ({ step, pace, scene: scene ? { id: scene } : null, scenes }) as unknown as ClassBoardView
const kestrel = { person: 1, call_sign: 'Kestrel', device: true, removed: false, committed: ['s1'] } as unknown as ClassBoardPerson

test.each([
  ['here', view('gather', 'led'), [1], 'here'],
  ['committed', view('commit', 'led', 's1'), [1], 'committed'],
  ['not yet at the second scene', view('commit', 'led', 's2'), [1], 'not yet'],
  ['away at the second scene', view('commit', 'led', 's2'), [], 'away'],
  ['at their own pace, how far', view('commit', 'self'), [1], '1 of 3'],
  ['at their own pace and away, how far too', view('commit', 'self'), [], 'away, 1 of 3'],
  ['after the end, how many', view('ended', 'self'), [], '1 of 3'],
])('%s', (_what, at, here, said) => expect(standing(kestrel, here, at)).toBe(said))
