import Database, { SqliteError } from 'better-sqlite3'
import { failure, type Result, success } from '@/lib/core/result'
import { openTables } from '../log/tables'
import { verify } from '../log/verify'

/** What a database holds once it has been found whole. */
export type Checked = { entries: number; headHash: string; people: number }

type Progress = (done: number, of: number) => void

/**
 * Checks a database that nobody has open: SQLite's own look at every page, no row that names one that is not there, and
 * the log's chain from the first entry to the last.
 */
export async function checkDatabase(file: string, progress: Progress = () => {}): Promise<Result<Checked>> {
  const db = new Database(file, { readonly: true, fileMustExist: true })
  try {
    const [found] = db.pragma('integrity_check(1)') as { integrity_check: string }[]
    if (found?.integrity_check !== 'ok') {
      return notWhole(`SQLite finds it damaged (${found?.integrity_check ?? 'no answer'}).`)
    }
    if ((db.pragma('foreign_key_check') as unknown[]).length > 0) {
      return notWhole('Rows in it name others that are not there.')
    }
    const { entries, headHash, trouble } = await verify(openTables(db), progress)
    if (trouble !== undefined) return notWhole(trouble.sentence)
    const people = db.prepare<[], number>('SELECT count(*) FROM "Person"').pluck().get() ?? 0
    return success({ entries, headHash, people })
  } catch (cause) {
    if (!(cause instanceof SqliteError)) throw cause
    return notWhole(`It can't be read as a log (${cause.message}).`)
  } finally {
    db.close()
  }
}

const notWhole = (sentence: string) => failure('database-damaged', `The database is not whole. ${sentence}`)
