// The app's own store on a device, straight from the disk.

/** One value of a store by its key, or all that a store holds. */
export function onDevice(page, store, key) {
  return page.evaluate(
    ([from, which]) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('lintel')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const held = opening.result.transaction(from).objectStore(from)
          const asked = which === null ? held.getAll() : held.get(which)
          asked.onerror = () => reject(asked.error)
          asked.onsuccess = () => {
            opening.result.close()
            resolve(asked.result)
          }
        }
      }),
    [store, key ?? null],
  )
}

/** Puts a value where the app keeps what outlives a page. */
export function keepOnDevice(page, key, value) {
  return page.evaluate(
    ([at, kept]) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('lintel')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const keeping = opening.result.transaction('kept', 'readwrite')
          keeping.objectStore('kept').put(kept, at)
          keeping.onerror = () => reject(keeping.error)
          keeping.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    [key, value],
  )
}
