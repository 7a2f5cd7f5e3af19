import type { LeftUndone } from '@/lib/records/view/leftUndone/leftUndone'

/** One thing left undone: where it is, since when, and what of it matters. */
export type UndoneItem = {
  key: string
  href: string
  words: string
  /** ISO 8601; left out where it has no beginning. */
  since?: string
  more: string
}

export type UndoneList = {
  key: keyof LeftUndone
  title: string
  /** What is listed, and in what order. */
  means: string
  /** What to do about it, for the letter. */
  todo: string
  items: readonly UndoneItem[]
  empty: { what: string; why: string; todo: string }
}
