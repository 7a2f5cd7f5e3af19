import type { HeldRecord } from '../fold/entry'
import { foldTeamFile, type TeamFile } from '../fold/teamFile'
import { versionOf } from '../kindVersions'

/** A record that nobody has said yet. */
export type Unsaid = { kind: string; body: Record<string, unknown> }

/**
 * The team file as it would be with further records: folded anew, so that what they change is worked out and not
 * foretold. Records of kinds that this program does not know stay out, as they do in the file itself.
 * @param saying who would say them and when, ISO 8601
 */
export function onceAdded(
  file: TeamFile,
  added: readonly Unsaid[],
  saying: { id: string; saidAt: string },
): TeamFile {
  const held = [...file.records.values()].map(
    ({ kind, entry }, place): HeldRecord => ({
      id: entry.id,
      kind,
      version: versionOf(kind)!,
      body: entry.body,
      saidAt: entry.at,
      author: entry.by,
      device: '',
      ...(entry.waiting ? {} : { seq: place + 1, receivedAt: entry.at, clockShiftMs: 0 }),
      ...(entry.withheld === undefined ? {} : { withheld: entry.withheld }),
    }),
  )
  const unsaid = added.map(
    ({ kind, body }, place): HeldRecord => ({
      id: `ffffffff-ffff-7fff-8fff-${place.toString(16).padStart(12, '0')}`,
      kind,
      version: versionOf(kind)!,
      body,
      saidAt: saying.saidAt,
      author: saying.id,
      device: '',
    }),
  )
  // Entries name no device, and their moments are put right already: by how much is known from the file alone.
  return { ...foldTeamFile([...held, ...unsaid], file.picturesHeld), clockShifts: file.clockShifts }
}
