import { sets } from '../../class/desk'
import { keptSetDraft } from '../../class/set-draft'
import { desk } from '../../words/class-desk'
import { useLoaded } from './use-loaded'

/** The sets of scenes that are kept. */
export function Sets() {
  const { value, failed } = useLoaded(sets)
  if (failed) return <p role="alert">{failed}</p>
  if (!value) return <p role="status">{desk.looking}</p>
  return (
    <div class="stack stack-wide">
      <div class="row spread">
        <h2>{desk.sets}</h2>
        <a class="button button-plain" href="/instructor/sets/new">
          {keptSetDraft(undefined) ? desk.goOnSet : desk.newSet}
        </a>
      </div>
      {value.sets.length === 0 && <p class="soft">{desk.noSets}</p>}
      <ul class="desk-list">
        {value.sets.map((one) => (
          <li key={one.id}>
            <a class="lone-link" href={`/instructor/sets/${one.id}`}>{one.title}</a>
            <span class="small soft">{desk.scenes(one.scenes.length)}</span>
          </li>
        ))}
      </ul>
    </div>
  )
}
