import { dueNow, openDrill } from '../../local/status'
import type { ScreenName } from '../../words/frame'
import { words } from '../../words/frame'
import { Glyph } from './glyph'

/** The app as a building cut open: each screen is a room with its door. */
export function Section({ rooms }: { rooms: readonly { name: ScreenName; at: string }[] }) {
  const next = openDrill.value
  return (
    <div class="section">
      <svg class="section-roof" viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
        <path d="M0 12 50 1 100 12" />
      </svg>
      <ul class="section-rooms">
        <li class="attic">
          <a class="room" href="/drill">
            <span class="label">{words.home.next}</span>
            <span class="room-name">{next ? words.home.resume(next.at, next.of) : dueNow.value ? words.home.due(dueNow.value) : words.home.fresh}</span>
          </a>
        </li>
        {rooms.map(({ name, at }) => (
          <li key={at}>
            <a class="room" href={`/${at}`}>
              <Glyph name={name} />
              <span class="room-name">{words.screens[name].name}</span>
              <span class="room-job">{words.screens[name].job}</span>
            </a>
          </li>
        ))}
      </ul>
    </div>
  )
}
