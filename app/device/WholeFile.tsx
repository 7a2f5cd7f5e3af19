'use client'

import { usePathname } from 'next/navigation'
import type { ReactNode } from 'react'
import { longestWithoutContactDays } from '@/lib/device/contactAge'
import { Empty } from '../ui/answers/Empty'
import { useDeviceState } from './deviceContext'
import { recordingPages } from './recordingPages'

/**
 * Shows the pages once the team file has come to this device whole for the first time. Half a file is an old state of
 * the log: a number that was disputed since would stand in it as trusted. After weeks without contact the pages that
 * read it are out of sight again, until somebody signs in.
 */
export function WholeFile({ children }: { children: ReactNode }) {
  const { freshAt, locked, arrived, trouble } = useDeviceState()
  const address = usePathname() ?? '/'
  if (locked && !recordingPages.includes(address)) return <Locked />
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

const Locked = () => (
  <div role="status">
    <Empty
      page
      what="The team file is out of sight"
      why={`This device has not been in contact for more than ${longestWithoutContactDays} days. Numbers may have been disputed since, and a lost phone must not tell them.`}
      todo={
        <>
          <p>
            <a href="/sign-in">Sign in</a> where there is a signal: then it is fetched anew.
          </p>
          <p>
            Recording goes on without: <a href="/cases/new">start a case</a>,{' '}
            <a href="/ask">ask for a rating</a>, <a href="/report">add a report</a>. It is kept here and sent
            later. <a href="/danger">The danger sheet</a> needs no file.
          </p>
        </>
      }
    />
  </div>
)
