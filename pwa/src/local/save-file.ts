const heldMS = 10_000 // until the browser has taken the file for sure; chosen by us

/** Gives a file to its owner, as the browser keeps what is downloaded. */
export function saveFile(name: string, file: Blob): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(file)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), heldMS)
}
