import { cautionsAt } from '../words/cautions'
import { words } from '../words/frame'
import './standing-cautions.css'

/** The cautions of a screen, at its foot: who decides, and the rest behind one press, or all of them. */
export function StandingCautions({ at, all = false }: { at: string; all?: boolean }) {
  const [first, ...rest] = cautionsAt(at)
  if (!first) return null
  return (
    <aside class="standing-cautions small soft" aria-label={words.caution.name}>
      <p>{first.text}</p>
      {rest.length > 0 && (
        <details open={all}>
          <summary>{words.caution.more(rest.length)}</summary>
          <ul>
            {rest.map(({ id, text }) => (
              <li key={id}>{text}</li>
            ))}
          </ul>
        </details>
      )}
    </aside>
  )
}
