import { rosters } from '../../class/desk'
import { desk } from '../../words/class-desk'
import { useLoaded } from './use-loaded'

/** The rosters that are kept. */
export function Rosters() {
  const { value, failed } = useLoaded(rosters)
  if (failed) return <p role="alert">{failed}</p>
  if (!value) return <p role="status">{desk.looking}</p>
  return (
    <div class="stack stack-wide">
      <div class="row spread">
        <h2>{desk.rosters}</h2>
        <a class="button button-plain" href="/instructor/rosters/new">
          {desk.newRoster}
        </a>
      </div>
      {value.rosters.length === 0 && <p class="soft">{desk.noRosters}</p>}
      <ul class="desk-list">
        {value.rosters.map((one) => (
          <li key={one.id}>
            <a class="lone-link" href={`/instructor/rosters/${one.id}`}>{one.title}</a>
            <span class="small soft">{desk.seats(one.seats.length)}</span>
          </li>
        ))}
      </ul>
    </div>
  )
}
