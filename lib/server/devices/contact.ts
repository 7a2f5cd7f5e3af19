import { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'

/** What a device says of itself whenever it sends or fetches: three headers, written by lib/device/transport.ts. */
export type Contact = {
  device: string
  /** How many records wait there to be sent. */
  waiting: number
  /** The build of the program that it runs. */
  build: string
}

const contact = z.object({
  device: z.string().regex(/^[\w.-]{1,64}$/),
  waiting: z
    .string()
    .regex(/^\d{1,7}$/)
    .transform(Number),
  build: z.string().regex(/^[\w.-]{1,64}$/),
})

/** Reads them off a request. A program that is no device, such as a script, names none: undefined. */
export function contactOf({ headers }: Request): Result<Contact | undefined> {
  const device = headers.get('inchwater-device')
  if (device === null) return success(undefined)
  const parsed = contact.safeParse({
    device,
    waiting: headers.get('inchwater-waiting'),
    build: headers.get('inchwater-build'),
  })
  if (parsed.success) return success(parsed.data)
  return failure('bad-contact', 'What this device says of itself could not be read. Reload the page.')
}
