import { Page } from '../../ui/page'
import { book } from '../../words/book'
import { sourceName } from '../../words/sources'
import { lessons, termOf, type Lesson } from './content'

/** One lesson: an idea, why, what to look at, what misleads, and where to try it. */
export function LessonPage({ id }: { id: string }) {
  const at = lessons.findIndex((one) => one.id === id)
  const lesson = lessons[at]
  if (!lesson) return <NoLesson />
  const next = lessons[at + 1]
  return (
    <Page title={lesson.title} aside={<a href="/field-book">{book.all}</a>}>
      <article class="lesson stack stack-wide">
        <p class="lesson-idea">{lesson.idea}</p>
        {lesson.body.map((paragraph) => (
          <p key={paragraph}>{paragraph}</p>
        ))}
        <List title={book.look} items={lesson.look} />
        <List title={book.misleads} items={lesson.misleads} />
        <section class="lesson-mistake">
          <h2 class="label">{book.mistake}</h2>
          <p>{lesson.mistake}</p>
        </section>
        <Try lesson={lesson} />
        <Words lesson={lesson} />
        <p class="small soft">
          {book.sources}: {sourceName(lesson.sources.join(', '))}
        </p>
        {next && (
          <a class="button" href={`/field-book/lesson/${next.id}`}>
            {book.next}: {next.title}
          </a>
        )}
      </article>
    </Page>
  )
}

function NoLesson() {
  return (
    <Page title={book.noLesson}>
      <a href="/field-book">{book.all}</a>
    </Page>
  )
}

function List({ title, items }: { title: string; items: readonly string[] }) {
  if (items.length === 0) return null
  return (
    <section class="stack">
      <h2>{title}</h2>
      <ul class="lesson-points">
        {items.map((one) => (
          <li key={one}>{one}</li>
        ))}
      </ul>
    </section>
  )
}

function Try({ lesson }: { lesson: Lesson }) {
  return (
    <section class="stack">
      <h2>{book.tryIt}</h2>
      <p>{lesson.try.do}</p>
      <div class="row">
        {lesson.try.kind && (
          <a class="button" href="/drill">
            {book.toDrill}
          </a>
        )}
        {lesson.try.prop && (
          <a class="button" href="/prop">
            {book.toProp}
          </a>
        )}
      </div>
    </section>
  )
}

function Words({ lesson }: { lesson: Lesson }) {
  const found = (lesson.terms ?? []).map(termOf).filter((one) => one !== undefined)
  if (found.length === 0) return null
  return (
    <section class="stack">
      <h2>{book.terms}</h2>
      <dl class="terms">
        {found.map(({ id, term, meaning }) => (
          <div key={id}>
            <dt>{term}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}
