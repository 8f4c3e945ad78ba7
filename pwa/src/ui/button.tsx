import type { ButtonHTMLAttributes } from 'preact'
import './button.css'

interface ButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'class' | 'type'> {
  /** main: the one thing to do here. plain: anything else. quiet: no border. */
  look?: 'main' | 'plain' | 'quiet'
  wide?: boolean
  /** Sends the form that it stands in, as the Enter key does. */
  submit?: boolean
}

/** A button. The main one is 72 px high: a gloved thumb finds it. */
export function Button({ look = 'plain', wide, submit, ...rest }: ButtonProps) {
  const type = submit ? 'submit' : 'button'
  return <button type={type} class={`button button-${look}${wide ? ' button-wide' : ''}`} {...rest} />
}
