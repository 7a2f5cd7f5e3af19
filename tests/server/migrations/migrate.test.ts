import { createHash } from 'node:crypto'
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { MigrationRefused, migrate, migrationNames, migrationsFolder, readMigration } from '@/prisma/migrate'
import { createMigration, diffSchema, migrationStatus } from '@/prisma/schemaEngine'

let folder = ''
let file = ''
let migrations = ''
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'migrate-'))
  file = path.join(folder, 'data', 'team.db')
  migrations = path.join(folder, 'migrations')
})
afterEach(() => rmSync(folder, { recursive: true }))

function write(name: string, sql: string): void {
  mkdirSync(path.join(migrations, name), { recursive: true })
  writeFileSync(path.join(migrations, name, 'migration.sql'), sql)
}
function read<Row>(sql: string): Row[] {
  const db = new Database(file, { readonly: true })
  try {
    return db.prepare<[], Row>(sql).all()
  } finally {
    db.close()
  }
}
const tables = () =>
  read<{ name: string }>("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name").map(
    ({ name }) => name,
  )
const recorded = () =>
  read<{ name: string; checksum: string; applied_steps_count: number; finished_at: string }>(
    'SELECT migration_name AS name, checksum, applied_steps_count, finished_at FROM _prisma_migrations ORDER BY name',
  )

test('migrate(file) makes the folder and the database, applies every migration in order, and then nothing', () => {
  write('0002_second', 'ALTER TABLE a ADD COLUMN y')
  write('0001_first', 'CREATE TABLE a (x); INSERT INTO a VALUES (1);')
  expect(migrate(file, migrations)).toEqual(['0001_first', '0002_second'])
  expect(migrate(file, migrations)).toEqual([])
  expect(read('SELECT * FROM a')).toEqual([{ x: 1, y: null }])
})

test('migrate(file) keeps Prisma’s own table, with the SHA-256 of each file', () => {
  const sql = 'CREATE TABLE a (x)\n'
  write('0001_first', sql)
  migrate(file, migrations)
  expect(recorded()).toEqual([
    {
      name: '0001_first',
      checksum: createHash('sha256').update(sql).digest('hex'),
      applied_steps_count: 1,
      finished_at: expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}\+00:00$/),
    },
  ])
})

test('Prisma’s own engine agrees that a migrated database has exactly our migrations', async () => {
  migrate(file)
  expect(await migrationStatus(file)).toMatchObject({ inStep: true })
})

test('Prisma’s own engine sees a database that lacks a migration', async () => {
  cpSync(migrationsFolder, migrations, { recursive: true })
  const last = migrationNames().at(-1)!
  rmSync(path.join(migrations, last), { recursive: true })
  migrate(file, migrations)
  expect(await migrationStatus(file)).toMatchObject({
    inStep: false,
    found: { history: { diagnostic: 'databaseIsBehind', unappliedMigrationNames: [last] } },
  })
})

test('migrate(file) refuses a migration that was edited after it was applied, and changes nothing', () => {
  write('0001_first', 'CREATE TABLE a (x)')
  migrate(file, migrations)
  write('0001_first', 'CREATE TABLE a (x, y)')
  write('0002_second', 'CREATE TABLE b (x)')
  expect(() => migrate(file, migrations)).toThrow(MigrationRefused)
  expect(() => migrate(file, migrations)).toThrow('The migration 0001_first was edited after')
  expect(tables()).toEqual(['_prisma_migrations', 'a'])
})

test('migrate(file) refuses a database newer than the program, in a plain sentence, and changes nothing', () => {
  write('0001_first', 'CREATE TABLE a (x)')
  write('0009_later', 'CREATE TABLE b (x)')
  migrate(file, migrations)
  rmSync(path.join(migrations, '0009_later'), { recursive: true })
  write('0002_second', 'CREATE TABLE c (x)')
  expect(() => migrate(file, migrations)).toThrow(
    'This database was written by a newer Inchwater (it has 0009_later). Nothing was changed. ' +
      'Start the newer program, or restore a back-up made with this one.',
  )
  expect(tables()).toEqual(['_prisma_migrations', 'a', 'b'])
})

test('migrate(file) leaves nothing of a run whose last migration fails, and says which one and why', () => {
  write('0001_first', 'CREATE TABLE a (x); INSERT INTO a VALUES (1)')
  migrate(file, migrations)
  write('0002_good', 'CREATE TABLE b (x)')
  write('0003_bad', 'CREATE TABLE c (x); INSERT INTO nowhere VALUES (1)')
  expect(() => migrate(file, migrations)).toThrow(
    'The migration 0003_bad failed, and the database is as it was: no such table',
  )
  expect(tables()).toEqual(['_prisma_migrations', 'a'])
  expect(recorded().map(({ name }) => name)).toEqual(['0001_first'])
})

test('migrate(file) refuses to go on after another tool’s migration that never finished', () => {
  write('0001_first', 'CREATE TABLE a (x)')
  migrate(file, migrations)
  const db = new Database(file)
  db.exec('UPDATE _prisma_migrations SET finished_at = NULL')
  db.close()
  expect(() => migrate(file, migrations)).toThrow('The migration 0001_first was begun by another tool')
})

test('migrate(file) redefines a table without losing the rows that name its rows', () => {
  write(
    '0001_first',
    `CREATE TABLE parent (id INTEGER PRIMARY KEY);
     CREATE TABLE child (parentId INTEGER REFERENCES parent(id) ON DELETE CASCADE);
     INSERT INTO parent VALUES (1), (2); INSERT INTO child VALUES (1), (2);`,
  )
  migrate(file, migrations)
  write(
    '0002_redefine',
    `CREATE TABLE new_parent (id INTEGER PRIMARY KEY, name TEXT);
     INSERT INTO new_parent (id) SELECT id FROM parent;
     DROP TABLE parent; ALTER TABLE new_parent RENAME TO parent;`,
  )
  migrate(file, migrations)
  expect(read('SELECT * FROM child JOIN parent ON id = parentId')).toHaveLength(2)
})

test('migrate(file) refuses migrations that would leave rows naming rows that are not there', () => {
  write(
    '0001_first',
    `CREATE TABLE parent (id INTEGER PRIMARY KEY);
     CREATE TABLE child (parentId INTEGER REFERENCES parent(id));
     INSERT INTO parent VALUES (1); INSERT INTO child VALUES (1);`,
  )
  migrate(file, migrations)
  write('0002_drop', 'DELETE FROM parent')
  expect(() => migrate(file, migrations)).toThrow('1 rows would name rows that are not there')
  expect(read('SELECT * FROM parent')).toHaveLength(1)
})

test('migrationNames(folder) of a folder that is not there is empty, and leaves files aside', () => {
  expect(migrationNames(migrations)).toEqual([])
  write('0001_first', '')
  writeFileSync(path.join(migrations, 'migration_lock.toml'), '')
  expect(migrationNames(migrations)).toEqual(['0001_first'])
})

test('the migrations say what the schema says', async () => {
  expect(await diffSchema()).toEqual({ same: true, sql: '-- This is an empty migration.' })
})

test('diffSchema(schema, migrations) tells a schema that the migrations do not follow', async () => {
  const schema = path.join(folder, 'schema')
  cpSync(path.join(migrationsFolder, '../schema'), schema, { recursive: true })
  writeFileSync(path.join(schema, 'more.prisma'), 'model Another {\n  id String @id\n}\n')
  const { same, sql } = await diffSchema(schema)
  expect(same).toBe(false)
  expect(sql).toContain('CREATE TABLE "Another"')
})

test('createMigration(name) writes the difference under the next number, and nothing when there is none', async () => {
  const schema = path.join(folder, 'schema')
  cpSync(path.join(migrationsFolder, '../schema'), schema, { recursive: true })
  cpSync(migrationsFolder, migrations, { recursive: true })
  writeFileSync(path.join(schema, 'more.prisma'), 'model Another {\n  id String @id\n}\n')
  const next = String(Number.parseInt(migrationNames().at(-1)!, 10) + 1).padStart(4, '0')
  expect(await createMigration('another', schema, migrations)).toBe(`${next}_another`)
  expect(readMigration(`${next}_another`, migrations).toString()).toMatch(
    /^-- CreateTable\nCREATE TABLE "Another"/,
  )
  expect(await createMigration('again', schema, migrations)).toBeUndefined()
  expect(readdirSync(migrations)).not.toContain('again')
})

test('createMigration(name) throws a RangeError for a name that is no plain word', async () => {
  await expect(createMigration('../escape')).rejects.toThrow(RangeError)
})
