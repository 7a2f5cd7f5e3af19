import { expect, test } from 'vitest'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import { onceAdded } from '@/lib/records/view/onceAdded'
import { sampleIds, sampleRecords } from '../samples'

const saying = { id: 'person-1', saidAt: '2026-05-01T08:00:00.000Z' }
const file = foldTeamFile(sampleRecords, new Set(['5f3a']))
/** A file without the function in it, so that two can be compared. */
const plain = ({ keptId: _keptId, ...rest }: TeamFile) => rest

test('onceAdded(file, nothing) is the file itself, folded anew: every record, whatever its version, and the pictures', () => {
  const same = onceAdded(file, [], saying)
  expect(plain(same)).toEqual(plain(file))
  for (const id of file.records.keys()) expect(same.keptId(id)).toBe(file.keptId(id))
})

test('onceAdded(file, nothing) keeps by how much each device was put right, and puts nothing right twice', () => {
  const said = sampleRecords
    .slice(0, 3)
    .map((record, place) => ({ ...record, seq: place + 1, device: 'device-2', clockShiftMs: 7_200_000 }))
  const { seq: _seq, clockShiftMs: _shift, ...unsent } = said[2]!
  const slow = foldTeamFile([...said.slice(0, 2), unsent])
  const same = onceAdded(slow, [], saying)
  expect([...same.clockShifts]).toEqual([['device-2', 7_200_000]])
  expect(same.records.get(unsent.id)?.entry.at).toBe(slow.records.get(unsent.id)?.entry.at)
  expect(plain(same)).toEqual(plain(slow))
})

test('onceAdded(file, a withdrawal) is what the log would fold to once it is in it, and changes the given file nowhere', () => {
  const withdrawal = { record: sampleIds.supportReport, reason: 'Misread.' }
  const then = onceAdded(file, [{ kind: 'withdrawal', body: withdrawal }], saying)
  expect(then.reports.get(sampleIds.supportReport)?.withdrawn).toMatchObject({
    reason: 'Misread.',
    by: saying.id,
  })
  expect(file.reports.get(sampleIds.supportReport)?.withdrawn).toBeUndefined()
  expect(then.records.size).toBe(file.records.size + 1)
})
