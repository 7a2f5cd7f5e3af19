'use client'

import { usePathname } from 'next/navigation'
import { DangerSheet } from '../danger/DangerSheet'
import { belongsTo, mainPlaces, morePlaces, type Place, pathsWithoutPlaces } from '../navigation'
import styles from './shell.module.css'

/**
 * The way around: a bar of words at the foot of a phone, a column at the side of a desk. The links are plain ones,
 * so that a page kept on the device opens without a network.
 */
export function Navigation() {
  const address = usePathname() ?? '/'
  const known = !pathsWithoutPlaces.some((path) => belongsTo(address, path))
  return (
    <div className={styles.around}>
      <header className={styles.top}>
        <a href="/" className={styles.name}>
          Inchwater
        </a>
        <div className={styles.danger}>
          <DangerSheet look="words">Danger sheet</DangerSheet>
        </div>
        {known && (
          <>
            <button type="button" className={styles.moreButton} popoverTarget="more-places">
              More
            </button>
            <nav id="more-places" popover="auto" aria-label="More" className={styles.more}>
              <Places places={morePlaces} address={address} />
            </nav>
          </>
        )}
      </header>
      {known && (
        <nav aria-label="Main" className={styles.main}>
          <Places places={mainPlaces} address={address} />
        </nav>
      )}
    </div>
  )
}

function Places({ places, address }: { places: readonly Place[]; address: string }) {
  return (
    <ul>
      {places.map(({ path, words }) => (
        <li key={path}>
          <a href={path} aria-current={belongsTo(address, path) ? 'page' : undefined}>
            {words}
          </a>
        </li>
      ))}
    </ul>
  )
}
