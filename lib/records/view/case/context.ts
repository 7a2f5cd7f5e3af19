import type { Context } from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseFile } from './caseFile'

/** Where a case happened, as far as it makes two cases alike. The fields are the catalogue's. */
export function contextOf(file: TeamFile, { furnace }: Pick<CaseFile, 'furnace'>): Context {
  const { rangeId, fuel, ventMaterial } = furnace.body
  return {
    furnace: furnace.id,
    fuel,
    ...(rangeId === undefined ? {} : { 'model range': file.keptId(rangeId) }),
    ...(ventMaterial === undefined ? {} : { venting: ventMaterial.toLowerCase() }),
  }
}
