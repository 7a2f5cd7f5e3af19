/**
 * Prisma's schema engine without its native program: the WebAssembly build, driven through better-sqlite3. It
 * writes migrations and compares them with the schema; the server applies them with
 * ./migrate.ts, because the engine itself applies a migration outside a transaction.
 *
 *     npm run schema diff           what the schema says and the migrations do not; exit 2 when they differ
 *     npm run schema create NAME    writes the difference as a new migration, to be read and completed by hand
 *     npm run schema status FILE    whether a database has exactly these migrations; exit 1 when not
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import { bindMigrationAwareSqlAdapterFactory, type SqlDriverAdapter } from '@prisma/driver-adapter-utils'
import type { MigrationList } from '@prisma/schema-engine-wasm/schema_engine_bg'
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg'
import { migrationNames, migrationsFolder, readMigration } from './migrate'

const schemaFolder = path.join(import.meta.dirname, 'schema')
const noFilters = { externalTables: [], externalEnums: [] }

/**
 * The SQL that would bring the migrations up to the schema, and whether there is any.
 *
 * @example await diffSchema()   // { same: true, sql: '-- This is an empty migration.' }
 */
export async function diffSchema(
  schema = schemaFolder,
  migrations = migrationsFolder,
): Promise<{ same: boolean; sql: string }> {
  const engine = await openEngine(':memory:', schema)
  const { exitCode, stdout } = await engine.diff({
    from: { tag: 'migrations', ...listMigrations(migrations) },
    to: { tag: 'schemaDatamodel', files: schemaFiles(schema) },
    script: true,
    exitCode: true,
    filters: noFilters,
  })
  return { same: exitCode === 0, sql: (stdout ?? '').trim() }
}

/**
 * Writes what diffSchema finds as a new migration, numbered after the last one.
 *
 * @param name what it is about, in small letters, digits and underscores
 * @returns the migration's name, or undefined when there is nothing to write
 * @throws RangeError for any other name
 * @example await createMigration('photos')   // '0003_photos'
 */
export async function createMigration(
  name: string,
  schema = schemaFolder,
  migrations = migrationsFolder,
): Promise<string | undefined> {
  if (!/^[a-z][a-z0-9_]*$/.test(name)) {
    throw new RangeError('createMigration requires a name of small letters, digits and underscores')
  }
  const { same, sql } = await diffSchema(schema, migrations)
  if (same) return undefined
  const last = Number.parseInt(migrationNames(migrations).at(-1) ?? '0', 10)
  const numbered = `${String(last + 1).padStart(4, '0')}_${name}`
  mkdirSync(path.join(migrations, numbered), { recursive: true })
  writeFileSync(path.join(migrations, numbered, 'migration.sql'), `${sql}\n`)
  return numbered
}

/** What the engine finds between a database and the migrations: edited, failed, missing or unknown ones. */
export async function migrationStatus(
  file: string,
  schema = schemaFolder,
  migrations = migrationsFolder,
): Promise<{ inStep: boolean; found: bindings.DiagnoseMigrationHistoryOutput }> {
  const engine = await openEngine(`file:${file}`, schema)
  const found = await engine.diagnoseMigrationHistory({
    migrationsList: listMigrations(migrations),
    optInToShadowDatabase: true,
    filters: noFilters,
  })
  const clean = found.editedMigrationNames.length === 0 && found.failedMigrationNames.length === 0
  return { inStep: found.hasMigrationsTable && found.history === null && clean, found }
}

const schemaFiles = (folder: string) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.prisma'))
    .sort()
    .map((name) => path.join(folder, name))
    .map((file) => ({ path: file, content: readFileSync(file, 'utf8') }))

const listMigrations = (folder: string): MigrationList => ({
  baseDir: folder,
  lockfile: { path: 'migration_lock.toml', content: 'provider = "sqlite"\n' },
  migrationDirectories: migrationNames(folder).map((name) => ({
    path: name,
    migrationFile: {
      path: 'migration.sql',
      content: { tag: 'ok', value: readMigration(name, folder).toString('utf8') },
    },
  })),
  shadowDbInitScript: '',
})

/**
 * To compare, the engine replays whole migration files as one raw statement, and better-sqlite3 prepares a single
 * statement only. Raw SQL without arguments therefore goes where scripts go.
 */
class ScriptedSqlite extends PrismaBetterSqlite3 {
  override async connect(): Promise<SqlDriverAdapter> {
    return scripted(await super.connect())
  }

  override async connectToShadowDb(): Promise<SqlDriverAdapter> {
    return scripted(await super.connectToShadowDb())
  }
}

function scripted(adapter: SqlDriverAdapter): SqlDriverAdapter {
  const executeOne = adapter.executeRaw.bind(adapter)
  adapter.executeRaw = async (query) => {
    if (query.args.length > 0) return executeOne(query)
    await adapter.executeScript(query.sql)
    return 0
  }
  return adapter
}

async function openEngine(url: string, schema: string): Promise<bindings.SchemaEngine> {
  startWebAssembly()
  const factory = new ScriptedSqlite({ url }, { shadowDatabaseUrl: ':memory:' })
  const datamodels = schemaFiles(schema).map((file): [string, string] => [file.path, file.content])
  return bindings.SchemaEngine.new({ datamodels }, () => {}, bindMigrationAwareSqlAdapterFactory(factory))
}

let started = false

/** The package expects a bundler to load its .wasm file; here it is loaded by hand, once. */
function startWebAssembly(): void {
  if (started) return
  const entry = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm')
  const file = path.join(path.dirname(entry), 'schema_engine_bg.wasm')
  const module = new WebAssembly.Module(readFileSync(file))
  const { exports } = new WebAssembly.Instance(module, { './schema_engine_bg.js': bindings })
  bindings.__wbg_set_wasm(exports)
  ;(exports.__wbindgen_start as () => void)()
  started = true
}

const [command, argument] = process.argv.slice(2)
if (pathToFileURL(process.argv[1] ?? '').href === import.meta.url) {
  if (command === 'diff') {
    const { same, sql } = await diffSchema()
    console.log(sql)
    process.exitCode = same ? 0 : 2
  } else if (command === 'create' && argument !== undefined) {
    const written = await createMigration(argument)
    console.log(
      written === undefined
        ? 'The migrations say what the schema says; nothing was written.'
        : `Wrote prisma/migrations/${written}/migration.sql: read it, and bring back the triggers of any table it redefines.`,
    )
  } else if (command === 'status' && argument !== undefined && existsSync(argument)) {
    const { inStep, found } = await migrationStatus(argument)
    console.log(inStep ? 'The database has exactly these migrations.' : JSON.stringify(found, null, 2))
    process.exitCode = inStep ? 0 : 1
  } else {
    console.error('Say one of: diff, create NAME, status FILE (a database that exists).')
    process.exitCode = 64
  }
}
