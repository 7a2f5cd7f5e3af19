'use client'

import { type ReactNode, useEffect, useState } from 'react'
import { type Device, openDevice } from '@/lib/device/device'
import { fetchMe, type Person, sayEmptied } from '@/lib/device/transport'
import { DeviceContext } from './deviceContext'
import { keepInStep } from './keepInStep'
import { leaveToWorker } from './outboxWorker'
import { StillHere } from './StillHere'
import { deviceId, onPersonGone, rememberedPerson, rememberPerson } from './whoIsHere'

type Opening = 'opening' | { device: Device; me: Person } | { problem: string }

/** Opens the signed-in person's store and keeps it in step with the server while the screen is open. */
export function DeviceProvider({ children }: { children: ReactNode }) {
  const [opening, setOpening] = useState<Opening>('opening')

  useEffect(() => {
    let closed = false
    let open: Device | undefined
    const openFor = async (me: Person): Promise<void> => {
      const device = await openDevice({
        me,
        deviceId: deviceId(localStorage),
        now: () => new Date(),
        build: build(),
      })
      if (closed) return device.close()
      leaveToWorker(device)
      open?.close()
      open = device
      setOpening({ device, me })
      await device.sync()
    }
    const begin = async (): Promise<void> => {
      const remembered = rememberedPerson(localStorage)
      if (remembered !== undefined) await openFor(remembered)
      const called = await fetchMe()
      if (closed) return
      if (called.ok) {
        rememberPerson(localStorage, called.value)
        const changed = remembered?.id !== called.value.id || remembered.role !== called.value.role
        if (changed) await openFor(called.value)
      } else if (remembered === undefined) {
        if (called.why === 'device ended') await sayEmptied(nothingHere())
        if (called.why === 'signed out' || called.why === 'device ended') location.assign(signInAddress())
        else setOpening({ problem: `${called.message} Reload when the server can be reached.` })
      }
    }
    begin().catch((cause) => setOpening({ problem: storeTrouble(cause) }))

    const stopKeeping = keepInStep(() => open)
    const stopWatching = onPersonGone(
      () => open?.state().me.id,
      () => location.reload(),
    )
    return () => {
      closed = true
      stopKeeping()
      stopWatching()
      open?.close()
    }
  }, [])

  if (opening === 'opening') return <p role="status">Opening the team file …</p>
  if ('problem' in opening) return <p role="alert">{opening.problem}</p>
  return (
    <DeviceContext value={opening.device}>
      <StillHere>{children}</StillHere>
    </DeviceContext>
  )
}

const build = (): string => document.documentElement.dataset.build ?? 'unknown'

/** What a device says of itself that remembers nobody, and so has nothing of anybody's to hand over. */
const nothingHere = () => ({ device: deviceId(localStorage), waiting: 0, build: build() })

const signInAddress = (): string => `/sign-in?next=${encodeURIComponent(location.pathname + location.search)}`

const storeTrouble = (cause: unknown): string =>
  `This browser does not let Inchwater keep its file (${cause instanceof Error ? cause.message : String(cause)}). ` +
  'Leave private browsing, or free some space, and reload.'
