import { chooseLanguage, language, languages, type Language } from '../words/language'
import { Button } from './button'
import './language-switch.css'

/** Each language by its own name, so that whoever cannot read this page can still choose. */
export function LanguageSwitch() {
  return (
    <div class="language-switch" role="group" aria-label={Object.values(languages).join(', ')}>
      {(Object.entries(languages) as [Language, string][]).map(([tag, name]) => (
        <Button key={tag} look="quiet" lang={tag} aria-pressed={tag === language} onClick={() => tag === language || chooseLanguage(tag)}>
          {name}
        </Button>
      ))}
    </div>
  )
}
