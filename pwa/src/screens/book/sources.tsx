import { book } from '../../words/book'
import { allSources } from '../../words/sources'
import { sourceText } from './content'

/** Where everything comes from, and how far it was read. */
export function Sources() {
  return (
    <ul class="book-sources">
      {allSources.map((source) => ({ ...source, ...sourceText(source.id) })).map(({ id, title, publisher, year, address, seen }) => (
        <li key={id}>
          <p>
            <strong>{title}</strong>
            {publisher && `, ${publisher}`}
            {year && `, ${year}`}
          </p>
          {address && (
            <p class="small">
              <a href={address} target="_blank" rel="noreferrer">
                {address}
              </a>
            </p>
          )}
          <p class="small soft">
            {book.seen}: {seen}
          </p>
        </li>
      ))}
    </ul>
  )
}
