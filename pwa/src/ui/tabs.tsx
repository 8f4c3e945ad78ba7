import { useRef } from 'preact/hooks'
import './tabs.css'

interface TabsProps<T extends string> {
  label: string
  tabs: readonly { id: NoInfer<T>; name: string; note?: string }[]
  chosen: T
  choose(id: NoInfer<T>): void
  /** The id of the element that a tab shows; it should carry role="tabpanel". */
  panel: string
}

/** A row of tabs: the chosen one stands in a gap of the line, like a door in a wall. Arrow keys move. */
export function Tabs<T extends string>({ label, tabs, chosen, choose, panel }: TabsProps<T>) {
  const list = useRef<HTMLDivElement>(null)

  const step = (by: number) => {
    const at = tabs.findIndex(({ id }) => id === chosen)
    const next = (at + by + tabs.length) % tabs.length
    choose(tabs[next]!.id)
    list.current?.querySelectorAll<HTMLElement>('[role=tab]')[next]?.focus()
  }

  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key]
    if (by === undefined) return
    event.preventDefault()
    step(by)
  }

  return (
    <div ref={list} class="tabs" role="tablist" aria-label={label} onKeyDown={onKeyDown} tabIndex={-1}>
      {tabs.map(({ id, name, note }) => (
        <button
          key={id}
          type="button"
          role="tab"
          aria-selected={id === chosen}
          aria-controls={panel}
          tabIndex={id === chosen ? 0 : -1}
          onClick={() => choose(id)}
        >
          {name}
          {note && <small>{note}</small>}
        </button>
      ))}
    </div>
  )
}
