import { useState } from 'preact/hooks'
import { Search } from '../../ui/search'
import { book } from '../../words/book'
import { trade } from '../../words/trade'
import { sourceName } from '../../words/sources'
import { holds, measureOf, rules, type Rule } from './content'

/** Every rule that the reading goes by: what it says, how it can be wrong, its source and its measured hit rate. */
export function Rules() {
  const [query, setQuery] = useState('')
  const found = rules.filter((rule) => holds(query, rule.text, rule.counter_sign, rule.look_alike, speaksFor(rule)))
  return (
    <div class="stack">
      <Search label={book.searchRules} query={query} set={setQuery} found={book.foundRules(found.length)} />
      <ul class="book-rules">
        {found.map((rule) => (
          <li key={rule.id}>
            <details>
              <summary>{rule.text}</summary>
              <Facts rule={rule} />
            </details>
          </li>
        ))}
      </ul>
    </div>
  )
}

function Facts({ rule }: { rule: Rule }) {
  const measured = measureOf(rule.id)
  const facts: [string, string | undefined][] = [
    [book.speaksFor, speaksFor(rule)],
    [book.speaksAgainst, rule.opposes?.map((stage) => trade.stages[stage]).join(', ')],
    [book.lookAlike, rule.look_alike],
    [book.counterSign, rule.counter_sign],
    [book.nextLook, rule.next_look],
    [book.sources, sourceName(rule.sources.join(', '))],
  ]
  return (
    <dl class="facts small">
      {facts.map(
        ([name, text]) =>
          text && (
            <div key={name}>
              <dt class="soft">{name}</dt>
              <dd>{text}</dd>
            </div>
          ),
      )}
      <dd class="soft">
        {measured ? book.measured(measured.hits, measured.fires, measured.share, measured.base) : book.notMeasured}
      </dd>
    </dl>
  )
}

function speaksFor({ supports = [], regime, hazards = [] }: Rule): string {
  return [
    ...supports.map((stage) => trade.stages[stage]),
    ...(regime ? [trade.regimes[regime]] : []),
    ...hazards.map((hazard) => trade.hazards[hazard]),
  ].join(', ')
}
