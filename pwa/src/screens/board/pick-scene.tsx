import type { ClassBoardView } from '../../wire.gen'
import { board } from '../../words/class-board'

interface Props {
  label: string
  scenes: ClassBoardView['scenes']
  at: string | undefined
  choose(scene: string): void
}

/** One scene of the class, chosen from a list by number and title. */
export function PickScene({ label, scenes, at, choose }: Props) {
  return (
    <label class="board-pick">
      <span class="label">{label}</span>
      <select value={at} onChange={(event) => choose(event.currentTarget.value)}>
        {scenes.map(({ id, number, title }) => (
          <option key={id} value={id}>
            {board.numbered(number, title)}
          </option>
        ))}
      </select>
    </label>
  )
}
