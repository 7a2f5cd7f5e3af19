import type { MouseEvent } from 'react'

/** What a mark of a picture opens. The table beside the picture opens the same, with larger targets. */
export type MarkLink = {
  href: string
  isOpen: boolean
  onClick: (event: MouseEvent) => void
}
