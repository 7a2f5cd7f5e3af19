import { render } from '@testing-library/react'
import type { ReactElement } from 'react'
import { DeviceContext } from '@/app/device/deviceContext'
import { success } from '@/lib/core/result'
import type { Device, DeviceState } from '@/lib/device/device'
import type { Person } from '@/lib/device/transport'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { recordKinds } from '@/lib/records/registry'

/** A device without a disk and without a network: it folds what it is given, and remembers what is added to it. */
export type FakeDevice = Device & {
  /** What screens have added, oldest first. */
  added: { id: string; kind: string; body: Record<string, unknown> }[]
  drafts: Map<string, unknown>
  /** The positions whose setpoint was opened, in order. */
  lookedUp: string[]
}

type Options = {
  records?: readonly HeldRecord[]
  me?: Person
  names?: ReadonlyMap<string, string>
  drafts?: Record<string, unknown>
  lookUps?: DeviceState['lookUps']
  /** The hashes of the pictures that the server holds. */
  picturesHeld?: readonly string[]
}

/** When everything on a fake device is said. */
const saidAt = '2026-02-01T08:00:00.000Z'

export const technician: Person = { id: 'person-1', name: 'Ines Talvik', role: 'technician' }
export const dispatcher: Person = { id: 'person-2', name: 'Bram Osterlo', role: 'dispatcher' }

/** The id of the n-th record added on a fake device, counted from 1. */
export const addedId = (count: number): string =>
  `01930000-0000-7000-8000-${count.toString(16).padStart(12, '0')}`

export function fakeDevice(options: Options = {}): FakeDevice {
  const { records = [], me = technician, names, drafts = {} } = options
  const picturesHeld = new Set(options.picturesHeld)
  const blobs = new Map<string, Blob>()
  const listeners = new Set<() => void>()
  const held = [...records]
  const lookedUp: string[] = []
  const added: FakeDevice['added'] = []
  const kept = new Map<string, unknown>(Object.entries(drafts))
  let state: DeviceState = {
    me,
    file: foldTeamFile(held, picturesHeld),
    names: names ?? new Map([technician, dispatcher].map((person) => [person.id, person.name])),
    freshAt: saidAt,
    locked: false,
    arrived: held.length,
    waiting: [],
    refused: [],
    pictures: [],
    lookUps: options.lookUps,
    trouble: undefined,
  }
  const change = (part: Partial<DeviceState>): void => {
    state = { ...state, ...part }
    for (const listener of listeners) listener()
  }
  const addAll: Device['addAll'] = async (records) => {
    const ids = records.map(({ kind, body, id = addedId(added.length + 1) }) => {
      added.push({ id, kind, body })
      const version = recordKinds[kind]!.version
      held.push({ id, kind, version, body, saidAt, author: me.id, device: 'device-1' })
      return id
    })
    change({ file: foldTeamFile(held, picturesHeld) })
    return ids
  }
  return {
    added,
    drafts: kept,
    lookedUp,
    state: () => state,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    addAll,
    async add(kind, body) {
      const [id] = await addAll([{ kind, body }])
      return id!
    },
    async sync() {},
    async sendAgain() {},
    async mend() {
      return undefined
    },
    async dropRefused() {},
    async keepPicture({ blob, sha256, mediaType, bytes }) {
      blobs.set(sha256, blob)
      const picture = { sha256, mediaType, bytes, keptAt: saidAt }
      change({ pictures: [...state.pictures, { ...picture, named: false, held: false, withheld: false }] })
      return success(picture)
    },
    readPicture: async (sha256) => blobs.get(sha256),
    async dropPicture(sha256) {
      blobs.delete(sha256)
      change({ pictures: state.pictures.filter((picture) => picture.sha256 !== sha256) })
    },
    async sendPictureAgain() {},
    async noteLookUp(positionId) {
      lookedUp.push(positionId)
    },
    readDraft: async (key) => kept.get(key),
    async writeDraft(key, value) {
      kept.set(key, value)
    },
    async clearDraft(key) {
      kept.delete(key)
    },
    close() {},
  }
}

/** Draws a screen as the signed-in person sees it on a device. */
export const renderOn = (device: Device, screen: ReactElement) =>
  render(<DeviceContext value={device}>{screen}</DeviceContext>)

/** A stored record for `fakeDevice`, in the order of the list that it stands in. */
export const held = (
  records: readonly [id: string, kind: string, body: Record<string, unknown>, saidAt?: string][],
): HeldRecord[] =>
  records.map(([id, kind, body, at], index) => ({
    id,
    kind,
    version: recordKinds[kind]?.version ?? 1,
    body,
    saidAt: at ?? saidAt,
    author: technician.id,
    device: 'device-1',
    seq: index + 1,
    receivedAt: at ?? saidAt,
    clockShiftMs: 0,
  }))
