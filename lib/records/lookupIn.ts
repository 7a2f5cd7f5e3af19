import type { Lookup } from './envelope'
import { counting, type TeamFile } from './fold/teamFile'

/** A record of the same step, said before the one that is judged. */
export type SaidBefore = { id?: string; kind: string; body: Record<string, unknown> }

/** What a kind's own rule may ask, answered from the team file of this device. */
export const lookupIn = (file: TeamFile, earlier: readonly SaidBefore[] = []): Lookup =>
  Object.assign(
    (id: string) => {
      const sameStep = earlier.find((record) => record.id === id)
      if (sameStep !== undefined) return sameStep
      const found = file.records.get(id)
      return found && { kind: found.kind, body: found.entry.body }
    },
    { endedAt: (visitId: string) => firstEndingAt(file, visitId), keptId: file.keptId },
  )

const firstEndingAt = (file: TeamFile, visitId: string): string | undefined =>
  counting(file.endings)
    .filter((ending) => ending.body.visitId === visitId)
    .map((ending) => ending.at)
    .sort()[0]
