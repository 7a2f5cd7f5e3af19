import { useSyncExternalStore } from 'react'

/**
 * An address bar for component tests, in the place of next/navigation:
 * `vi.mock('next/navigation', () => import('../setup/fakeNavigation'))`, with `openAt` before each render.
 */
let address = new URL('http://localhost/')
let query = new URLSearchParams(address.search)
let visited: string[] = []
const listeners = new Set<() => void>()

const show = (href: string): void => {
  address = new URL(href, address)
  query = new URLSearchParams(address.search)
  for (const listener of listeners) listener()
}

const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Opens a page by its address; what was visited before is forgotten. */
export function openAt(href: string): void {
  visited = []
  show(href)
}

/** The addresses that the page went to by itself since `openAt`, oldest first. */
export const wentTo = (): readonly string[] => visited

const router = {
  push: (href: string) => {
    visited.push(href)
    show(href)
  },
  replace: (href: string) => router.push(href),
}

export const useRouter = () => router
export const usePathname = () => useSyncExternalStore(subscribe, () => address.pathname)
export const useSearchParams = () => useSyncExternalStore(subscribe, () => query)
