// A screen worked by key alone, and what one sees of it.
import assert from 'node:assert/strict'

/** What has the focus, as a screen reader would say it. */
const focused = (page) =>
  page.evaluate(() => {
    const one = document.activeElement
    const label = one.labels?.[0]?.textContent ?? ''
    return { text: (one.ariaLabel ?? (one.textContent.trim() || label)).trim(), tag: one.tagName, role: one.role, look: String(one.className) }
  })

/** Presses Tab until something that fits has the focus, within so many presses, and asserts that the focus is seen. */
export async function tabTo(page, fits, { within = 40 } = {}) {
  const passed = []
  const is = typeof fits === 'function' ? fits : ({ text }) => (typeof fits === 'string' ? text === fits : fits.test(text))
  for (let n = 0; n < within; n++) {
    await page.keyboard.press('Tab')
    const at = await focused(page)
    passed.push(at.text.slice(0, 40) || at.tag)
    if (!is(at)) continue
    assert.ok(await seen(page), `one sees that ${at.text} has the focus, and where it is`)
    return at
  }
  throw new Error(`${fits} is not reached within ${within} presses of Tab: ${passed.join(', ')}`)
}

/** Comes to something by Tab and presses a key on it. */
export async function pressOn(page, fits, { key = 'Enter', within } = {}) {
  const at = await tabTo(page, fits, { within })
  await page.keyboard.press(key)
  return at
}

/** Types into a field that Tab leads to, in place of what stands there. */
export async function typeInto(page, label, text) {
  await tabTo(page, ({ text: said, tag }) => tag === 'INPUT' && said === label)
  await page.keyboard.press('Control+A')
  await page.keyboard.type(text)
}

/** Whether the focus is drawn (an outline of 2 px or more) and lies within the window, under nothing. */
function seen(page) {
  return page.evaluate(() => {
    const one = document.activeElement
    const drawn = [one, one.closest('label')].some((at) => {
      const { outlineStyle, outlineWidth } = at ? getComputedStyle(at) : {}
      return outlineStyle && outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2
    })
    const { left, top, width, height } = one.getBoundingClientRect()
    const at = document.elementFromPoint(left + width / 2, top + height / 2)
    return drawn && at !== null && (one.contains(at) || at.contains(one))
  })
}
