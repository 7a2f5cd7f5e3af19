/**
 * npm run verify-log [-- --expect NUMBER:HASH]
 *
 * Walks the whole log of the data folder (INCHWATER_DATA, else ./data) and says whether it is as it was written.
 * `--expect` compares it with a number and hash kept elsewhere, on a letter or in a back-up: without one, a log
 * that somebody wrote anew from the first entry would fit together too. Exits 1 on trouble, 64 on a slip in what
 * was typed.
 */
import { existsSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import Database, { SqliteError } from 'better-sqlite3'
import { sayProgress } from '../backup/sayProgress'
import { databaseFile } from '../database'
import { type LogTables, openTables } from './tables'
import { type Verification, verify } from './verify'

type Expected = { seq: number; hash: string }

export async function verifyCommand(
  args: readonly string[],
  file: string,
  say: (sentence: string) => void,
): Promise<0 | 1 | 64> {
  const expected = readExpected(args)
  if (expected === 'not understood') {
    say('Say nothing, or: --expect NUMBER:HASH, as printed earlier by this command.')
    return 64
  }
  if (!existsSync(file)) {
    say(`There is no log at ${file}. INCHWATER_DATA names the data folder.`)
    return 1
  }
  const db = new Database(file, { fileMustExist: true })
  try {
    const tables = openTables(db)
    return report(await verify(tables, sayProgress(say)), entryAt(expected, tables), expected, say)
  } catch (cause) {
    if (!(cause instanceof SqliteError)) throw cause
    say(`The database ${file} can't be read as a log (${cause.message}). Restore a back-up.`)
    return 1
  } finally {
    db.close()
  }
}

function report(
  { entries, headHash, withheld, trouble }: Verification,
  hashThere: string | undefined,
  expected: Expected | undefined,
  say: (sentence: string) => void,
): 0 | 1 {
  for (const { seq, bySeq } of withheld) say(`Entry ${seq}: withheld by record ${bySeq}.`)
  if (trouble !== undefined) {
    say(`${trouble.sentence} ${entries === 0 ? 'No entry' : `The first ${entries} entries`} before it fit.`)
    say('Stop the server, keep a copy of the data folder as it is, and restore the newest back-up that fits.')
    return 1
  }
  if (expected !== undefined && hashThere !== expected.hash) {
    say(
      hashThere === undefined
        ? `Entry ${expected.seq} was there when its hash was noted, and is gone: the log was cut short.`
        : `Entry ${expected.seq} had another hash when it was noted: the log was written anew since.`,
    )
    return 1
  }
  say(
    entries === 0
      ? 'The log is empty.'
      : `The log is whole: ${entries} entries, ${withheld.length} with something withheld.`,
  )
  if (expected !== undefined)
    say(`Entry ${expected.seq} has the hash that was noted: nothing up to it was written anew.`)
  if (entries > 0) say(`Keep this elsewhere to compare with later: --expect ${entries}:${headHash}`)
  return 0
}

const entryAt = (expected: Expected | undefined, tables: LogTables): string | undefined => {
  const [row] = expected === undefined ? [] : tables.walk(expected.seq - 1, 1)
  return row?.seq === expected?.seq ? row?.hash : undefined
}

function readExpected(args: readonly string[]): Expected | undefined | 'not understood' {
  if (args.length === 0) return undefined
  const [, seq, hash] = /^--expect[ =]([1-9]\d{0,14}):([0-9a-f]{64})$/.exec(args.join(' ')) ?? []
  return seq === undefined || hash === undefined ? 'not understood' : { seq: Number(seq), hash }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = await verifyCommand(process.argv.slice(2), databaseFile(), console.log)
}
