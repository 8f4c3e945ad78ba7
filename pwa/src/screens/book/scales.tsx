import { Page } from '../../ui/page'
import { Swatch } from '../../ui/swatch'
import { book } from '../../words/book'
import { hues, ordinalCues, scale, scalesNote, type OrdinalCue } from '../../words/scales'
import { capital } from '../../words/sentence'
import { HueSwatch } from '../../ui/hue-swatch'
import { trade } from '../../words/trade'

/** The scales that every rating uses: each step with its moving swatch and what it looks like. */
export function ScalesPage() {
  return (
    <Page title={book.scales} aside={<a href="/field-book">{book.all}</a>}>
      <div class="stack stack-wide">
        <p>{scalesNote}</p>
        {ordinalCues.map((cue) => (
          <Scale key={cue} cue={cue} />
        ))}
        <section class="stack">
          <h2>{trade.cues.colour}</h2>
          <ul class="scale">
            {hues.map(({ colour, name, says, also }) => (
              <li key={colour}>
                <HueSwatch colour={colour} />
                <p>
                  <strong>{name}.</strong> {says} <span class="soft">{also}</span>
                </p>
              </li>
            ))}
          </ul>
        </section>
      </div>
    </Page>
  )
}

function Scale({ cue }: { cue: OrdinalCue }) {
  const { title, question, levels } = scale(cue)
  return (
    <section class="stack">
      <h2>{title}</h2>
      <p class="soft">{question}</p>
      <ol class="scale">
        {levels.map(({ level, name, looks }) => (
          <li key={level}>
            <Swatch cue={cue} level={level} />
            <p>
              <strong>{capital(name)}.</strong> {looks}
            </p>
          </li>
        ))}
      </ol>
    </section>
  )
}
