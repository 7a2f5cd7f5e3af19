import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { openLog } from '@/lib/server/log/openLog'
import { logGuards } from '@/lib/server/log/verify'
import { migrate, migrationNames, migrationsFolder } from '@/prisma/migrate'
import { manager, noon, record, technician } from '../log/freshLog'
import { smallKinds } from '../log/smallKinds'

const triggersOf = (db: Database.Database) =>
  db
    .prepare<[], { name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' AND tbl_name IN ('LogEntry', 'LogContent') ORDER BY name",
    )
    .all()

test('after every migration the log’s guards are as they were, its records are there, and the chain fits', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'every-'))
  const file = path.join(folder, 'team.db')
  const migrations = path.join(folder, 'migrations')
  let guards: ReturnType<typeof triggersOf> | undefined
  let stored = 0
  let rows: unknown[] = []
  for (const name of migrationNames()) {
    cpSync(path.join(migrationsFolder, name), path.join(migrations, name), { recursive: true })
    expect(migrate(file, migrations)).toEqual([name])
    const db = new Database(file)
    const everything = () =>
      db.prepare('SELECT * FROM LogEntry JOIN LogContent USING (seq) ORDER BY seq').all()
    if (guards === undefined) {
      guards = triggersOf(db)
      expect(guards.map((guard) => guard.name)).toEqual([...logGuards].sort())
    }
    expect(triggersOf(db)).toEqual(guards)
    expect(everything()).toEqual(rows)

    const log = openLog({ db, kinds: smallKinds, now: () => noon })
    const said = record({ body: { text: name, saidBy: 'A name' } })
    const taken = record({
      kind: 'withholding',
      version: 1,
      author: manager.id,
      body: { record: said.id, fields: ['saidBy'], reason: 'A name got in.' },
    })
    const sentAt = noon.toISOString()
    await log.appendRecords({ sentAt, records: [said, record()] }, technician)
    await log.appendRecords({ sentAt, records: [taken] }, manager)
    stored += 3
    const found = await log.verify()
    expect(found.trouble).toBeUndefined()
    expect(found).toMatchObject({ entries: stored, withheld: expect.any(Array) })
    expect(found.withheld).toHaveLength(stored / 3)
    rows = everything()
    db.close()
  }
  expect(stored).toBeGreaterThan(0)
  rmSync(folder, { recursive: true })
})
