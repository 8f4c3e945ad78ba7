import { prop } from '../../words/prop'

/** What a small box teaches about a house and what it does not: in one line beside what is seen, the rest behind it. */
export function ScaleNote({ small }: { small: boolean }) {
  return (
    <details class="prop-scale">
      <summary>{small ? prop.scaleTitle : prop.scaleTitleHouse}</summary>
      <p>{prop.scaleYes}</p>
      <p>{prop.scaleNo}</p>
      <p class="soft">{prop.scaleHow}</p>
      <p class="small soft">{prop.scaleSource}</p>
      <p><a class="lone-link" href="/field-book/lesson/box-and-house">{prop.scaleLesson}</a></p>
    </details>
  )
}
