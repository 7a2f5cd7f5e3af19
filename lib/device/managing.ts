import '@/lib/records/withoutEval'
import { z } from 'zod'
import { type RecordEnvelope, recordEnvelope } from '@/lib/records/envelope'
import { type Called, call } from './transport'

/** What a manager sees of the team's devices; the server keeps it and no device does. */
const knownDevices = z.object({
  devices: z.array(
    z.object({
      id: z.string(),
      personId: z.string(),
      signedIn: z.boolean(),
      firstContactAt: z.string(),
      lastContactAt: z.string(),
      examinedSeq: z.int(),
      waiting: z.int(),
      build: z.string(),
    }),
  ),
  endings: z.array(
    z.object({
      device: z.string(),
      personId: z.string(),
      endedAt: z.string(),
      endedBy: z.string(),
      emptiedAt: z.string().nullable(),
      picturesLost: z.int(),
    }),
  ),
  /** How many records that devices handed over wait for a manager. */
  undecided: z.int(),
  /** The build that the server serves now. */
  build: z.string(),
})

export type KnownDevices = z.infer<typeof knownDevices>
export type KnownDevice = KnownDevices['devices'][number]
export type DeviceEnding = KnownDevices['endings'][number]

export const fetchDevices = (): Promise<Called<KnownDevices>> => call('/api/devices', knownDevices)

const setAside = z.object({
  // Handed over as it was: it may be of a shape that this program does not know.
  record: recordEnvelope.partial().extend({ id: z.string() }),
  personId: z.string(),
  device: z.string(),
  receivedAt: z.string(),
  clockShiftMs: z.number(),
  refused: z.object({ by: z.string(), at: z.string(), reason: z.string() }).optional(),
  pictureLost: z.literal(true).optional(),
})

/** A record that a device handed over, and that a manager has not admitted. */
export type SetAside = Omit<z.infer<typeof setAside>, 'record'> & {
  record: Partial<RecordEnvelope> & { id: string }
}

export const fetchSetAside = (): Promise<Called<SetAside[]>> =>
  call('/api/set-aside', z.array(setAside)) as Promise<Called<SetAside[]>>
