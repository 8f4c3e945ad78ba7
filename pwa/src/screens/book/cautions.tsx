import { cautions } from '../../words/cautions'
import { sourceName } from '../../words/sources'

/** Every caution, wherever else it stands. */
export function Cautions() {
  return (
    <ul class="book-cautions">
      {cautions.map(({ id, text, sources }) => (
        <li key={id}>
          <p>{text}</p>
          <p class="small soft">{sourceName(sources.join(', '))}</p>
        </li>
      ))}
    </ul>
  )
}
