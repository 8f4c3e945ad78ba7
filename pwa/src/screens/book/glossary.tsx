import { useState } from 'preact/hooks'
import { Search } from '../../ui/search'
import { book } from '../../words/book'
import { sourceName } from '../../words/sources'
import { holds, termOf, terms } from './content'

/** The trade's words, with a search that looks into terms, aliases and meanings. */
export function Glossary() {
  const [query, setQuery] = useState('')
  const found = terms.filter(({ term, aliases, meaning }) => holds(query, term, aliases?.join(' '), meaning))
  return (
    <div class="stack">
      <Search label={book.search} query={query} set={setQuery} found={book.found(found.length)} />
      <dl class="terms">
        {found.map(({ id, term, aliases, meaning, used, see, sources }) => (
          <div key={id} id={id}>
            <dt>
              {term}
              {aliases && <small class="soft">{` ${book.also} ${aliases.join(', ')}`}</small>}
            </dt>
            <dd>{meaning}</dd>
            <dd class="small soft">
              {[`${book.used}: ${used}`, ...(see ? [`${book.see}: ${see.map((one) => termOf(one)?.term ?? one).join(', ')}`] : [])].join(' · ')}
            </dd>
            <dd class="small soft">
              <details>
                <summary>{book.sources}</summary>
                {sourceName(sources.join(', '))}
              </details>
            </dd>
          </div>
        ))}
      </dl>
    </div>
  )
}
