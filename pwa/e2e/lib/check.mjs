// What holds of every screen.
import assert from 'node:assert/strict'
import { AxeBuilder } from '@axe-core/playwright'

/** Nothing runs over the edge, and one main heading names the screen. */
export async function fits(page, what = 'the screen') {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  assert.ok(over <= 0, `${what} runs ${over} px over the edge`)
  assert.equal(await page.locator('h1').count(), 1, `${what} has one main heading`)
}

/** Nothing that axe finds. */
export async function accessible(page, what = 'the screen') {
  const { violations } = await new AxeBuilder({ page }).analyze()
  const found = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ').slice(0, 300)}`)
  assert.deepEqual(found, [], what)
}

export async function checkScreen(page, what) {
  await fits(page, what)
  await accessible(page, what)
}
