import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { build, type Plugin } from 'vite'
import { boot } from './boot.ts'

const slot = '<div id="app"></div>'
const script = /<script type="module"[^>]*src="(\/assets\/[^"]+\.js)"[^>]*><\/script>/
const sheets = /<link rel="stylesheet"[^>]*href="\/(assets\/[^"]+\.css)"[^>]*>/g
// The first picture waits for Home's last line: a slow phone paints an empty page
// first otherwise, and Home some 100 ms later (the HTML standard's rel="expect";
// a browser without it paints as before).
const whole = '<link rel="expect" href="#app" blocking="render">'

/**
 * Writes Home and its style into index.html, so that a slow phone shows it when
 * the page has come and not only after script and style; the app follows the
 * first paint. Every other address gets shell.html: the same page without Home
 * in it, and with the app as soon as it comes.
 */
export function firstScreen(): Plugin {
  return {
    name: 'lintel-first-screen',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      async handler(_, bundle) {
        const page = bundle['index.html']
        if (page?.type !== 'asset') return // not the build of the app: its worker, or this file's own
        const shell = String(page.source)
        this.emitFile({ type: 'asset', fileName: 'shell.html', source: shell })
        const home = await rendered()
        const app = script.exec(shell)?.[1]
        if (!app || shell.includes('modulepreload')) this.error('index.html: it must name one script, and that alone: see vite.config.ts')
        let inlined = 0
        page.source = shell
          .replace(script, () => `${whole}\n  <link rel="preload" as="script" crossorigin fetchpriority="low" href="${app}">`)
          .replace('</body>', () => `  <script>${boot(app)}</script>\n  </body>`)
          .replaceAll(sheets, (_link, name: string) => {
            const style = bundle[name]
            if (style?.type !== 'asset') this.error(`index.html names ${name}, which the build did not make`)
            inlined++
            return `<style>${String(style.source).trim()}</style>`
          })
          .replace(slot, () => `<div id="app">${home}</div>`)
        // A sheet that is left over would hold the first screen up, as would an empty page.
        if (inlined === 0 || !shell.includes(slot)) {
          this.error('index.html: no style sheet or no place for the first screen was found: see build/first-screen.ts')
        }
      },
    },
  }
}

/** Home as text, from a build of its own that runs here and now. */
async function rendered(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'lintel-first-screen-'))
  try {
    await build({
      configFile: false,
      logLevel: 'error',
      oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
      ssr: { noExternal: true },
      plugins: [otherScreensLeftOut],
      build: { ssr: 'src/app/first-screen.tsx', outDir: folder, emptyOutDir: true, rolldownOptions: { output: { entryFileNames: 'first-screen.mjs' } } },
    } as Parameters<typeof build>[0])
    // What a browser has and the first screen asks for on the way in.
    Object.assign(globalThis, { location: { pathname: '/', protocol: 'https:' }, matchMedia: () => ({ matches: false }) })
    Object.defineProperty(globalThis, 'navigator', { value: { language: 'en' }, configurable: true })
    const made = (await import(pathToFileURL(join(folder, 'first-screen.mjs')).href)) as { firstScreen: () => string }
    return made.firstScreen()
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

const otherScreensLeftOut: Plugin = {
  name: 'lintel-other-screens-left-out',
  enforce: 'pre',
  load: (id) => (/\/screens\/(?!home\/)[^/]+\/index\.tsx$/.test(id) ? 'export default () => null' : undefined),
}
