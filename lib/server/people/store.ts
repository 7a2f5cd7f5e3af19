import path from 'node:path'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import Database from 'better-sqlite3'
import { PrismaClient } from '@/prisma/generated/client'
import { type Auth, makeAuth } from './auth'

/** Where people are kept: a synchronous connection for changes of several statements, Prisma for the rest. */
export type Store = {
  dataFolder: string
  database: Database.Database
  prisma: PrismaClient
  close(): Promise<void>
}

// On globalThis, because development reloads modules and would leave connections behind.
const kept = globalThis as typeof globalThis & {
  inchwaterPeople?: Map<string, Store & { auths: Map<boolean, Auth> }>
}
kept.inchwaterPeople ??= new Map()

export function store(): Store & { auths: Map<boolean, Auth> } {
  const dataFolder = path.resolve(process.env.INCHWATER_DATA ?? 'data')
  const known = kept.inchwaterPeople!.get(dataFolder)
  if (known) return known
  const file = path.join(dataFolder, 'inchwater.db')
  const database = new Database(file, { timeout: 2000 })
  database.pragma('foreign_keys = ON')
  const prisma = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: `file:${file}` }) })
  const opened = {
    dataFolder,
    database,
    prisma,
    auths: new Map<boolean, Auth>(),
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
  const { auths, prisma, dataFolder } = store()
  const auth = auths.get(secure) ?? makeAuth(prisma, dataFolder, secure)
  auths.set(secure, auth)
  return auth
}
