import type { ComponentType } from 'preact'
import { go, place } from '../../app/router'
import { Page } from '../../ui/page'
import { Tabs } from '../../ui/tabs'
import { words } from '../../words/frame'
import { book } from '../../words/book'
import { Cautions } from './cautions'
import { LessonPage } from './lesson'
import { Lessons } from './lessons'
import { Rules } from './rules'
import { ScalesPage } from './scales'
import { Sources } from './sources'
import { Glossary } from './glossary'
import './book.css'

const parts = { lessons: Lessons, words: Glossary, rules: Rules, cautions: Cautions, sources: Sources } satisfies Record<
  string,
  ComponentType
>
type Part = keyof typeof parts

/** The field book. Its address says which part is open, so that any page of it can be linked to. */
export default function FieldBook() {
  const [part = 'lessons', id] = place.value.rest
  if (part === 'lesson') return <LessonPage key={id} id={id ?? ''} />
  if (part === 'scales') return <ScalesPage />
  const open: Part = part in parts ? (part as Part) : 'lessons'
  const Shown = parts[open]
  return (
    <Page title={words.screens.book.name}>
      <Tabs<Part>
        label={book.parts}
        panel="book-part"
        chosen={open}
        choose={(next) => go(`/field-book/${next}`)}
        tabs={(Object.keys(parts) as Part[]).map((one) => ({ id: one, name: book.tabs[one] }))}
      />
      <div id="book-part" role="tabpanel" aria-label={book.tabs[open]}>
        <Shown />
      </div>
    </Page>
  )
}
