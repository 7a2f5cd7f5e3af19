'use client'

import { usePathname } from 'next/navigation'
import { callbackPlaces } from '../ui/navigation'
import styles from './callbackPlaces.module.css'

/** The way around what the team learns from its own cases. */
export function CallbackPlaces() {
  const address = usePathname()
  return (
    <nav aria-label="Callbacks">
      <ul className={styles.places}>
        {callbackPlaces.map(({ path, words }) => (
          <li key={path}>
            <a href={path} aria-current={address === path ? 'page' : undefined}>
              {words}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
