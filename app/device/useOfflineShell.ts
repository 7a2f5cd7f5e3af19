'use client'

import { useEffect, useState } from 'react'

/** Why pages cannot be opened without a signal here, if they cannot; undefined while they can or it is not known yet. */
export type NoOffline = 'plain http' | 'no service worker' | 'refused'

/** Keeps the pages openable without a signal: registers the service worker, in a build only. */
export function useOfflineShell(): NoOffline | undefined {
  const [why, setWhy] = useState<NoOffline>()
  useEffect(() => {
    if (process.env.NODE_ENV !== 'production') return
    if (!window.isSecureContext) return setWhy('plain http')
    if (!('serviceWorker' in navigator)) return setWhy('no service worker')
    const refused = (cause: unknown): void => {
      // Without a signal, or with a worker that is here already, nothing is lost.
      if (navigator.serviceWorker.controller !== null || !navigator.onLine) return
      console.warn('The service worker was refused:', cause)
      setWhy('refused')
    }
    navigator.serviceWorker
      .register('/sw.js', { updateViaCache: 'none' })
      .then((registration?: ServiceWorkerRegistration) => {
        const installing = registration?.installing
        installing?.addEventListener('statechange', () => {
          if (installing.state === 'redundant') refused('a page or a file of it could not be kept')
        })
      }, refused)
  }, [])
  return why
}
