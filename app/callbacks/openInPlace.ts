import type { MouseEvent } from 'react'
import type { Opening } from './behind'

/** Opens without loading the page anew; with a modifier key the link does what the browser does with links. */
export function openInPlace(event: MouseEvent, key: string, { onOpen }: Opening): void {
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
  event.preventDefault()
  onOpen(key)
}
