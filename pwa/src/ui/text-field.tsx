import type { InputHTMLAttributes } from 'preact'
import { useId } from 'preact/hooks'
import './text-field.css'

interface TextFieldProps {
  label: string
  value: string
  set(value: string): void
  hint?: string
  /** Characters at most. */
  most?: number
  type?: 'text' | 'password' | 'number'
  /** code: large and apart, for what is read off a screen letter by letter. */
  look?: 'code'
  capitals?: boolean
  autoComplete?: string
  least?: number
}

/** One line to type in, with its label above and what to know of it below. */
export function TextField(props: TextFieldProps) {
  const { label, value, set, hint, most, type = 'text', look, capitals, autoComplete = 'off', least } = props
  const id = useId()
  const limits = type === 'number' ? { min: least ?? 0, max: most ?? 1e9 } : { maxLength: most ?? 200 }
  const attributes = { type, ...limits } as InputHTMLAttributes<HTMLInputElement>
  return (
    <div class={look ? `text-field text-field-${look}` : 'text-field'}>
      <label class="label" for={id}>
        {label}
      </label>
      <input
        id={id}
        value={value}
        {...attributes}
        autoComplete={autoComplete}
        autoCapitalize={capitals ? 'characters' : 'off'}
        spellcheck={false}
        {...(hint && { 'aria-describedby': `${id}-hint` })}
        onInput={(event) => set(event.currentTarget.value)}
      />
      {hint && (
        <p class="small soft" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  )
}
