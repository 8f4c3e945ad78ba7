import { renderToString } from 'preact-render-to-string'
import { App } from './app'

/** Home as it stands before anything is known of the device: the build writes it into the page. */
export const firstScreen = (): string => renderToString(<App />)
