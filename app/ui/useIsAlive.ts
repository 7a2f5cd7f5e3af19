'use client'

import { useSyncExternalStore } from 'react'

const never = () => () => {}

/**
 * Whether the script has taken the page over. A form that the script sends must not be sent before: the browser would
 * put what was typed, a password too, into an address.
 */
export const useIsAlive = (): boolean =>
  useSyncExternalStore(
    never,
    () => true,
    () => false,
  )
