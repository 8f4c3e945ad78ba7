import { book } from '../../words/book'
import { lessons } from './content'

/** The lessons in their order, each with the one thing to remember. */
export function Lessons() {
  return (
    <ol class="book-list">
      <li>
        <a href="/field-book/scales">
          <strong>{book.scales}</strong>
          <span class="soft">{book.scalesJob}</span>
        </a>
      </li>
      {lessons.map(({ id, title, idea, order }) => (
        <li key={id}>
          <a href={`/field-book/lesson/${id}`}>
            <strong>
              <span class="book-number">{order}</span> {title}
            </strong>
            <span class="soft">{idea}</span>
          </a>
        </li>
      ))}
    </ol>
  )
}
