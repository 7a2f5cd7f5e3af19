import type { Lookup, RecordEnvelope } from '@/lib/records/envelope'
import { type HeldRecord, saidAtCorrected } from '@/lib/records/fold/entry'
import { keptIds } from '@/lib/records/fold/keptIds'
import { withdrawnRecords } from '@/lib/records/fold/withdrawals'
import type { SameAsBody } from '@/lib/records/kinds/sameAs'
import type { LogRow, LogTables } from './tables'

/** What a kind's own rule may ask of the log. */
export const lookupIn = (tables: LogTables): Lookup =>
  Object.assign(
    (id: string) => {
      const row = tables.find(id)
      return row && { kind: row.kind, body: recordIn(row).body }
    },
    {
      endedAt: (visitId: string) =>
        tables
          .endingsOf(visitId)
          .filter(({ id }) => !isWithdrawn(id, tables))
          .map((row) => saidAtCorrected(recordIn(row)))
          .sort()[0],
      keptId: (id: string) =>
        keptIds(
          tables
            .allOf('same as')
            .filter((row) => !isWithdrawn(row.id, tables))
            .map((row) => recordIn(row).body as SameAsBody),
        )(id),
    },
  )

const recordIn = ({ bytes, seq, clockShiftMs }: LogRow): HeldRecord => ({
  ...(JSON.parse(bytes) as RecordEnvelope),
  seq,
  clockShiftMs,
})

/** Whether a record is taken back, by a withdrawal that is not taken back itself. */
function isWithdrawn(id: string, tables: LogTables): boolean {
  const withdrawals: HeldRecord[] = []
  const named = [id]
  // Withdrawals of the withdrawals found are looked for in their turn: the list grows while it is walked.
  for (const one of named) {
    for (const row of tables.withdrawalsOf(one)) {
      withdrawals.push(recordIn(row))
      named.push(row.id)
    }
  }
  return withdrawnRecords(withdrawals.sort((a, b) => a.seq! - b.seq!)).has(id)
}
