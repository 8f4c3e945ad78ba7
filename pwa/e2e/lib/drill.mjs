// Doing a drill as a person does: look, answer every question, commit, go on.

/** Waits until the picture of the next scene stands. */
export async function sceneReady(page) {
  await page.locator('.item-asking .scene canvas').waitFor({ timeout: 60_000 })
}

/** Answers every question of the open scene by pressing, then commits. */
export async function answerScene(page) {
  await sceneReady(page)
  const commit = page.getByRole('button', { name: 'Commit' })
  while ((await commit.count()) === 0) await answerOne(page)
  const sure = page.getByRole('group', { name: /How sure/ })
  if (await sure.count()) await sure.getByRole('button', { name: /Fairly/ }).click()
  await commit.click()
  await page.getByText('Kept on this device').waitFor({ timeout: 60_000 })
}

async function answerOne(page) {
  const asked = page.getByRole('region', { name: 'Your answer' })
  const said = await asked.textContent()
  const slider = asked.getByRole('slider')
  if (await slider.count()) {
    await slider.press('ArrowDown')
    await asked.getByRole('button', { name: 'Set it here' }).click()
  } else {
    await asked.locator('.choice').nth(1).click()
  }
  await page.waitForFunction(
    (text) => document.querySelector('section[aria-label="Your answer"]')?.textContent !== text,
    said,
  )
}

/** A whole set of five, from the start screen to its end. */
export async function wholeSet(page) {
  await page.getByRole('button', { name: /^Begin/ }).click()
  for (let scene = 1; scene <= 5; scene++) {
    await answerScene(page)
    await page.getByRole('button', { name: scene < 5 ? 'Next scene' : 'See all five' }).click()
  }
  await page.getByRole('heading', { name: 'Five scenes' }).waitFor()
}

/** Every event on the device, straight from its store. */
export function eventsOnDevice(page) {
  return page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('lintel')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const all = opening.result.transaction('events').objectStore('events').getAll()
          all.onsuccess = () => resolve(all.result)
          all.onerror = () => reject(all.error)
        }
      }),
  )
}
