import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { CaseFile } from './caseFile'

/** Switches that prove air: the ones whose readings prove a repair. A gas-pressure switch or a sensor is none. */
const provesAir = ['one-port', 'two-port', 'opens on rise'] as const

/** Every switch position of a furnace, in the order of their names; none where its model range is not on record. */
export function positionsOf(file: TeamFile, { furnace }: Pick<CaseFile, 'furnace'>): Entry<PositionBody>[] {
  const { rangeId } = furnace.body
  if (rangeId === undefined) return []
  return counting(file.positions)
    .filter(({ body }) => file.keptId(body.rangeId) === file.keptId(rangeId))
    .sort((a, b) => (a.body.name < b.body.name ? -1 : 1))
}

/** The switches of a furnace that prove air, also those of which nobody has said on what stage. */
export const positionsToProve = (file: TeamFile, of: Pick<CaseFile, 'furnace'>): Entry<PositionBody>[] =>
  positionsOf(file, of).filter(({ body }) => (provesAir as readonly string[]).includes(body.kind))
