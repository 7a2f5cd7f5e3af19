'use client'

import { useState } from 'react'
import type { DeviceEnding, KnownDevice } from '@/lib/device/managing'
import { type Posted, post } from '../door/post'
import { Button } from '../ui/form/Button'
import { sayAge } from '../ui/words/sayAge'
import { sayMoment } from '../ui/words/sayDate'
import styles from './people.module.css'

type Props = {
  name: string
  /** Whether that person may sign in: somebody who was taken off the team may not. */
  maySignIn: boolean
  devices: readonly KnownDevice[]
  endings: readonly DeviceEnding[]
  nameOf(personId: string): string
  /** The build that the server serves now. */
  build: string
  /** ISO 8601. */
  now: string
  after(posted: Posted, words: string): Promise<void>
}

/** One person's devices: when each was last in contact, what waits there, and how to end a lost one. */
export function DevicesOf({ name, maySignIn, devices, endings, nameOf, build, now, after }: Props) {
  if (devices.length === 0) return <p>{name} has not signed in on any device yet.</p>
  return (
    <ul className={styles.devices} aria-label={`Devices of ${name}`}>
      {devices.map((device) => {
        const ending = endings.find((each) => each.device === device.id && each.personId === device.personId)
        const isOpen = ending !== undefined && ending.emptiedAt === null
        return (
          <li key={device.id}>
            <p>
              <b>Device {device.id.slice(0, 4)}</b>, since {sayMoment(device.firstContactAt)}. Last contact{' '}
              {sayAge(device.lastContactAt, now)}; {waitingWords(device.waiting)}
              {device.build !== build && '; it runs an older version'}.
            </p>
            {ending === undefined ? null : isOpen ? (
              <p>
                Ended by {nameOf(ending.endedBy)} on {sayMoment(ending.endedAt)}. At its next contact what
                waits there is handed to the managers, and the team file is taken off it, also while somebody
                else is signed in there. {otherwiseWords(name, maySignIn)}
              </p>
            ) : (
              <p>
                Ended by {nameOf(ending.endedBy)}; it was emptied on {sayMoment(ending.emptiedAt!)}.
              </p>
            )}
            {ending !== undefined && ending.picturesLost > 0 && <p>{lostWords(ending.picturesLost)}</p>}
            {!isOpen && device.signedIn && <EndDevice {...{ device, name, after }} />}
          </li>
        )
      })}
    </ul>
  )
}

/** What becomes of it in a browser that can't list its databases, or that was told no key. */
const otherwiseWords = (name: string, maySignIn: boolean): string =>
  maySignIn
    ? `A browser that can’t do that for somebody else does it once ${name} signs in there.`
    : `A browser that can’t do that for somebody else keeps it, because ${name} can’t sign in any more. Take ${name} back until they have signed in there once; or clear what that browser keeps of this site: then what waits there is lost.`

const waitingWords = (waiting: number): string =>
  waiting === 0
    ? 'nothing waited there then'
    : `${waiting === 1 ? '1 record' : `${waiting} records`} waited there then`

const lostWords = (count: number): string =>
  count === 1
    ? '1 picture there was damaged and could not be handed over: it is lost.'
    : `${count} pictures there were damaged and could not be handed over: they are lost.`

function EndDevice({ device, name, after }: Pick<Props, 'name' | 'after'> & { device: KnownDevice }) {
  const [asked, setAsked] = useState(false)
  const end = async () => {
    const { id, personId } = device
    await after(await post('/api/devices/end', { device: id, personId }), `${name}’s device is ended`)
    setAsked(false)
  }
  if (!asked) return <Button onClick={() => setAsked(true)}>End this device</Button>
  return (
    <>
      <p role="alert">
        It is signed out for good at its next contact. What waits there comes to the managers first and is
        seen by nobody else until one of you admits it; what {name} typed and did not add is lost. Press again
        to end it.
      </p>
      <Button kind="main" autoFocus onClick={() => void end()}>
        End it
      </Button>{' '}
      <Button kind="quiet" onClick={() => setAsked(false)}>
        Leave it
      </Button>
    </>
  )
}
