import type { RecordKind } from './envelope'

/** The day begins this much earlier, in milliseconds, where it begins first on Earth: nobody says where a record is said. */
const earliestDayMs = 14 * 3_600_000

/** The field of a body whose day is still to come when it is said, of those on which something happened. */
export function dayToCome(
  { happenedOn = [] }: Pick<RecordKind, 'happenedOn'>,
  body: Readonly<Record<string, unknown>>,
  saidAt: string,
): string | undefined {
  const today = new Date(Date.parse(saidAt) + earliestDayMs).toISOString().slice(0, 10)
  return happenedOn.find((field) => {
    const day = body[field]
    return typeof day === 'string' && day > today
  })
}

export const dayToComeSentence =
  'This day is still to come. Write the day on which it was; if it is right, put the clock of this device right.'
