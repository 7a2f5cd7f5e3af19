import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { migrate, migrationNames, migrationsFolder } from '@/prisma/migrate'

test('the news of pictures keeps its rows and numbers, each with a mark of its own, and goes on after them', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'marks-'))
  const file = path.join(folder, 'team.db')
  const before = path.join(folder, 'migrations')
  for (const name of migrationNames().filter((each) => each < '0010'))
    cpSync(path.join(migrationsFolder, name), path.join(before, name), { recursive: true })
  migrate(file, before)
  const hold = (sha256: string) => {
    const db = new Database(file)
    db.prepare(
      `INSERT INTO "Picture" VALUES (?, 'kept', 'image/jpeg', 60, 40, 9, '2026-02-01T10:00:00.000Z')`,
    ).run(sha256)
    db.close()
  }
  for (const sha256 of ['a', 'b']) hold(sha256)
  migrate(file)
  hold('c')
  const db = new Database(file)
  db.prepare('DELETE FROM "Picture" WHERE "sha256" = ?').run('a')
  const rows = db
    .prepare<[], { number: number; sha256: string; held: number; mark: string }>(
      'SELECT * FROM "PictureNews"',
    )
    .all()
  db.close()
  rmSync(folder, { recursive: true })
  expect(rows.map(({ number, sha256, held }) => [number, sha256, held])).toEqual([
    [1, 'a', 1],
    [2, 'b', 1],
    [3, 'c', 1],
    [4, 'a', 0],
  ])
  expect(new Set(rows.map(({ mark }) => mark)).size).toBe(4)
  for (const { mark } of rows) expect(mark).toMatch(/^[0-9a-f]{64}$/)
})
