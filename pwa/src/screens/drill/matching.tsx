import { useEffect, useState } from 'preact/hooks'
import { randomBelow } from '../../local/random'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { useFocusIfLost } from '../../ui/focus'
import { Page } from '../../ui/page'
import { swatchWords } from '../../render'
import { Swatch } from '../../ui/swatch'
import { drill } from '../../words/drill'
import { levelName, ordinalCues, scale } from '../../words/scales'
import { capital } from '../../words/sentence'
import { matching, newcomer } from './state'
import { rounds } from './rounds'

const { matching: words } = drill

/** The first three minutes: moving swatches are matched to the words of the scale. Nothing is recorded. */
export function Matching() {
  const [all] = useState(() => rounds(randomBelow))
  const [at, goTo] = useState(0)
  const [said, say] = useState<number>()
  const heading = useFocusIfLost<HTMLHeadingElement>(`${at} ${said}`)
  const round = all[at]
  useEffect(() => scrollTo(0, 0), [at])
  if (!round) return <Finished />
  const { cue, level } = round
  return (
    <Page title={words.title} alone aside={<span class="small soft">{words.at(at + 1, all.length)}</span>}>
      <div class="stack matching">
        <div class="row matching-swatches">
          <Framed caption={said === undefined ? undefined : words.this} twin={swatchWords(cue, level)}>
            <Swatch cue={cue} level={level} large />
          </Framed>
          {said !== undefined && said !== level && (
            <Framed caption={words.yours} twin={swatchWords(cue, said)}>
              <Swatch cue={cue} level={said} large />
            </Framed>
          )}
        </div>
        <h2 class="ask-text" ref={heading} tabIndex={-1}>
          {said === undefined ? words.ask[cue] : said === level ? words.yes(levelName(cue, level)) : words.no(levelName(cue, level))}
        </h2>
        {said === undefined ? (
          <Choices<number>
            label={words.ask[cue]}
            columns={1}
            choices={scale(cue).levels.map((one) => ({ value: one.level, name: capital(one.name) }))}
            chosen={undefined}
            choose={(named) => say(named)}
          />
        ) : (
          <>
            <p>{scale(cue).levels.find((one) => one.level === level)?.looks}</p>
            <Button look="main" wide onClick={() => (say(undefined), goTo(at + 1))}>
              {words.next}
            </Button>
          </>
        )}
        <Button look="quiet" onClick={() => (matching.value = false)}>
          {words.skip}
        </Button>
      </div>
    </Page>
  )
}

/** A swatch with its twin in words, for who cannot see it, and what it stands for. */
function Framed({ caption, twin, children }: { caption: string | undefined; twin: string; children: preact.ComponentChildren }) {
  return (
    <figure class="matching-swatch">
      <div role="img" aria-label={twin}>{children}</div>
      {caption && <figcaption class="small soft">{caption}</figcaption>}
    </figure>
  )
}

/** All four scales once through, to look at. */
function Finished() {
  return (
    <Page title={words.done}>
      <div class="stack stack-wide">
        <p class="soft">{words.doneWhy}</p>
        {ordinalCues.map((cue) => (
          <section key={cue} class="stack">
            <h2>{scale(cue).title}</h2>
            <ol class="rail">
              {scale(cue).levels.map(({ level }) => (
                <li key={level} class="stop">
                  <Swatch cue={cue} level={level} />
                  <span class="stop-name">{levelName(cue, level)}</span>
                </li>
              ))}
            </ol>
          </section>
        ))}
        <Button look="main" wide onClick={() => ((newcomer.value = false), (matching.value = false))}>
          {words.toDrill}
        </Button>
      </div>
    </Page>
  )
}
