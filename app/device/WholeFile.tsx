'use client'

import type { ReactNode } from 'react'
import { Empty } from '../ui/answers/Empty'
import { useDeviceState } from './deviceContext'

/**
 * Shows the pages once the team file has come to this device whole for the first time. Half a file is an old state of
 * the log: a number that was disputed since would stand in it as trusted.
 */
export function WholeFile({ children }: { children: ReactNode }) {
  const { freshAt, arrived, trouble } = useDeviceState()
  if (freshAt !== undefined) return children
  const sofar = arrived === 0 ? 'Nothing of it is here yet.' : `${arrived} records of it are here.`
  return (
    <div role="status">
      <Empty
        page
        what={trouble === undefined ? 'Fetching the team file …' : 'The team file is not here yet'}
        why={`${sofar} It is shown once it is whole, because half of it could mislead.`}
        todo={
          trouble === undefined ? (
            <p>This takes a few seconds, once for each person on a device.</p>
          ) : (
            <p>
              It goes on by itself when the server can be reached. <a href="/danger">The danger sheet</a>{' '}
              needs none of it.
            </p>
          )
        }
      />
    </div>
  )
}
