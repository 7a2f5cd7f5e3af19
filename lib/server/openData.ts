import { mkdirSync } from 'node:fs'
import path from 'node:path'
import { migrate } from '@/prisma/migrate'
import { databaseFile, dataFolder } from './database'

/**
 * Opens a data folder: makes it, for this account alone, brings its database up to date, and has the rest of the
 * program use it. The server does it itself; a program that seeds does it first.
 *
 * @throws MigrationRefused when the database can't be brought up to this program
 */
export function openData(folder = dataFolder()): string {
  const opened = path.resolve(folder)
  mkdirSync(opened, { recursive: true, mode: 0o700 })
  process.env.INCHWATER_DATA = opened
  migrate(databaseFile(opened))
  return opened
}
