import { languageKey, themeKey } from '../src/kept-keys.ts'

// What a page with the first screen in it runs on its own, before the app is
// there. Written out as it stands in the page; the server allows it by its digest.

/**
 * Puts the page into the theme that was chosen, and brings the app in once the
 * first screen has been painted: its scripts would hold the paint up. A button
 * that is tapped before the app stands is noted for it (src/app/early.ts). Who
 * reads Spanish gets no flash of English, but the app at once.
 */
export const boot = (app: string): string => `
let kept={}
try{kept=localStorage}catch{}
const theme=kept[${JSON.stringify(themeKey)}]
if(theme&&theme!=='auto')document.documentElement.dataset.theme=theme
addEventListener('click',globalThis.lintelEarly=e=>{lintelEarly.tapped=e.target.closest('button')})
const bring=()=>import(${JSON.stringify(app)})
if((kept[${JSON.stringify(languageKey)}]||navigator.language).toLowerCase().startsWith('es')){
document.getElementById('app').replaceChildren()
bring()
}else requestAnimationFrame(()=>setTimeout(bring))
`
