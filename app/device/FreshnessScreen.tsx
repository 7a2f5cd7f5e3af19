'use client'

import { useEffect, useState } from 'react'
import { isOnItsWay, isRefused } from '@/lib/device/picture/pictures'
import { NewAnswers } from '../ask/NewAnswers'
import { FreshnessLine } from '../ui/shell/FreshnessLine'
import { useDeviceState } from './deviceContext'
import styles from './freshness.module.css'
import { useOfflineShell } from './useOfflineShell'

/** The line on every page that says how fresh the file is, what waits, and why the last contact failed. */
export function FreshnessScreen() {
  const { freshAt, locked, waiting, refused, pictures, trouble } = useDeviceState()
  const now = useMinute()
  const noOffline = useOfflineShell()
  return (
    <div className={styles.line}>
      <NewAnswers />
      <FreshnessLine
        fetchedAt={freshAt}
        now={now}
        waiting={waiting.length}
        pictures={pictures.filter(isOnItsWay).length}
        refused={refused.length + pictures.filter(isRefused).length}
        refusedHref="/waiting"
      />
      {locked && <p>The team file is out of sight until you have signed in. What you record is kept.</p>}
      {noOffline !== undefined && <p>{noOfflineWords[noOffline]}</p>}
      {trouble !== undefined && <p>{troubleWords[trouble.why]}</p>}
      {trouble?.why === 'signed out' && (
        <p>
          <a href={`/sign-in?next=${encodeURIComponent(location.pathname + location.search)}`}>
            Sign in again
          </a>
        </p>
      )}
    </div>
  )
}

const noOfflineWords = {
  'plain http':
    'Pages do not open here without a signal, because this address is not https. What you record is kept all the same. Ask whoever runs the server for https.',
  'no service worker':
    'Pages do not open here without a signal: this browser, or its private mode, does not allow it. What you record is kept all the same.',
  refused:
    'Pages do not open here without a signal yet: the browser could not keep them. Free some space on the device, then reload.',
} as const

const troubleWords = {
  'no signal': 'No signal to the server: what you record waits on this device and is sent later.',
  'signed out':
    'Your session has ended. Nothing is lost: what you record is sent once you have signed in again.',
  'device ended': 'A manager has signed this device out.',
  'newer page': 'Inchwater was updated in another tab. Reload this page to go on.',
  'server trouble': 'The server did not answer as it should. What you record waits on this device.',
  'store trouble':
    'This browser does not let Inchwater keep its file now. Free some space on the device; then reload this page.',
} as const

/** The time, renewed every minute. ISO 8601. */
function useMinute(): string {
  const [now, setNow] = useState(() => new Date().toISOString())
  useEffect(() => {
    const timer = setInterval(() => setNow(new Date().toISOString()), 60_000)
    return () => clearInterval(timer)
  }, [])
  return now
}
