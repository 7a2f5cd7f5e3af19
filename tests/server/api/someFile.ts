import { recordKinds } from '@/lib/records/registry'
import { theLog } from '@/lib/server/database'
import type { Person } from '@/lib/server/people/session'
import { held } from '../../app/setup/fakeDevice'
import { disputedRecords } from '../../app/setup/smallFile'

/** Puts the small team file of the component tests into the real log, as said by a manager; every record is stored. */
export async function storeSmallFile(manager: Pick<Person, 'id'>, further: Parameters<typeof held>[0] = []) {
  const records = [...disputedRecords, ...held(further)].map(({ id, kind, version, body }) => ({
    id,
    kind,
    version: version ?? recordKinds[kind]!.version,
    body,
    saidAt: '2026-02-01T08:00:00.000Z',
    author: manager.id,
    device: 'desk-1',
  }))
  const answers = await theLog().appendRecords(
    { sentAt: '2026-02-01T08:00:00.000Z', records },
    { id: manager.id, role: 'manager' },
  )
  const refused = answers.filter(({ outcome }) => outcome !== 'stored')
  if (refused.length > 0) throw new Error(JSON.stringify(refused))
}
