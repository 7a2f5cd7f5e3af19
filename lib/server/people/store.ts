import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import Database from 'better-sqlite3'
import { PrismaClient } from '@/prisma/generated/client'
import { databaseFile, dataFolder as theDataFolder } from '../database'
import { type Auth, makeAuth } from './auth'

/** Where people are kept: a synchronous connection for changes of several statements, Prisma for the rest. */
export type Store = {
  dataFolder: string
  database: Database.Database
  prisma: PrismaClient
  close(): Promise<void>
}

// The connections are on globalThis, because development reloads modules and would leave open ones behind.
const kept = globalThis as typeof globalThis & { inchwaterPeople?: Map<string, Store> }
kept.inchwaterPeople ??= new Map()
const auths = new WeakMap<Store, { plain?: Auth; secure?: Auth }>()

/** The people of a data folder whose database was migrated, as the server does at its start. */
export function store(dataFolder = theDataFolder()): Store {
  const known = kept.inchwaterPeople!.get(dataFolder)
  if (known) return known
  const file = databaseFile(dataFolder)
  const database = new Database(file, { timeout: 2000, fileMustExist: true })
  database.pragma('foreign_keys = ON')
  const prisma = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: `file:${file}` }) })
  const opened: Store = {
    dataFolder,
    database,
    prisma,
    async close() {
      kept.inchwaterPeople!.delete(dataFolder)
      database.close()
      await prisma.$disconnect()
    },
  }
  kept.inchwaterPeople!.set(dataFolder, opened)
  return opened
}

/** The sign-in library for browsers that come over https, or over plain http on this machine. */
export function authFor(secure: boolean): Auth {
  const people = store()
  const made = auths.get(people) ?? {}
  auths.set(people, made)
  made[secure ? 'secure' : 'plain'] ??= makeAuth(people.prisma, people.dataFolder, secure)
  return made[secure ? 'secure' : 'plain']!
}
