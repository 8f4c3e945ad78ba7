import { Button } from '../../ui/button'
import { words } from '../../words/frame'
import { log } from '../../words/log'
import { locale } from '../../words/language'
import { trialsOf, type Answered } from '../../practice/record'
import { refreshers, toCalendar } from './calendar'
import { download } from './export'

/** When what was learned wants to be seen again, to look at and for one's own calendar. */
export function Refreshers({ answers, device }: { answers: readonly Answered[]; device: string }) {
  const now = Date.now()
  const list = refreshers(trialsOf(answers), now)
  if (list.length === 0) return null
  const most = Math.max(...list.map(({ families }) => families))
  const file = () =>
    toCalendar(
      list,
      { summary: log.refresherTitle, description: (n) => `${log.refresherWhy(n)}\n${words.caution.banner}` },
      device,
      Date.now(),
    )
  return (
    <section class="stack">
      <h2>{log.refreshers}</h2>
      <p class="small soft">{log.refreshersWhy}</p>
      <dl class="bars">
        {list.map(({ day, families }) => (
          <div key={day}>
            <dt>{new Date(`${day}T12:00`).toLocaleDateString(locale, { weekday: 'short', day: 'numeric', month: 'short' })}</dt>
            <dd>
              <span class="bar" aria-hidden="true">
                <span style={{ width: `${Math.round((100 * families) / most)}%` }} />
              </span>
              {log.families(families)}
            </dd>
          </div>
        ))}
      </dl>
      <Button onClick={() => download('lintel-refreshers.ics', 'text/calendar', file())}>{log.toCalendar}</Button>
    </section>
  )
}
