import type { Database } from 'better-sqlite3'
import type { PictureType } from '@/lib/records/kinds/photo'
import { asStored } from '../people/moment'

/** What is known of a picture whose file is there: the table is made from the files, and from the log. */
export type HeldPicture = {
  /** Of the bytes that were sent: its name everywhere. */
  sha256: string
  /** Of the bytes that are kept. */
  storedSha256: string
  mediaType: PictureType
  width: number
  height: number
  bytes: number
}

export type PictureNews = {
  news: { sha256: string; held: boolean }[]
  next: number
  more: boolean
  /** Stands for the news up to `next`; without any there is none. */
  mark?: string
  /** The numbers begin anew, after a back-up was restored: what the asker knew is to be forgotten. */
  anew?: true
}

export const heldPicture = (database: Database, sha256: string): HeldPicture | undefined =>
  database
    .prepare<[string], HeldPicture>(
      'SELECT "sha256", "storedSha256", "mediaType", "width", "height", "bytes" FROM "Picture" WHERE "sha256" = ?',
    )
    .get(sha256)

export const heldPictures = (database: Database): string[] =>
  database.prepare<[], string>('SELECT "sha256" FROM "Picture"').pluck().all()

/** Notes that a picture is held; a trigger makes news of it. Noting it again changes nothing. */
export const noteHeld = (database: Database, picture: HeldPicture, now: Date): void =>
  void database
    .prepare(
      `INSERT INTO "Picture" ("sha256", "storedSha256", "mediaType", "width", "height", "bytes", "heldSince")
       VALUES (@sha256, @storedSha256, @mediaType, @width, @height, @bytes, @heldSince)
       ON CONFLICT ("sha256") DO NOTHING`,
    )
    .run({ ...picture, heldSince: asStored(now) })

export const noteGone = (database: Database, sha256: string): void =>
  void database.prepare('DELETE FROM "Picture" WHERE "sha256" = ?').run(sha256)

/** From where on an asker wants news. */
export type NewsAsked = {
  after: number
  /** What stood for the news up to `after`; who did not know of marks yet sends none. */
  mark?: string | undefined
  limit: number
}

/**
 * Which pictures came and went after a number, in order: what a device asks for beside the log. It begins anew where the
 * news is shorter than the number, or another by now than the mark stood for.
 */
export function pictureNews(database: Database, { after, mark, limit }: NewsAsked): PictureNews {
  const newest = database
    .prepare<[], number>('SELECT coalesce(max("number"), 0) FROM "PictureNews"')
    .pluck()
    .get()!
  const isOther = mark !== undefined && markAt(database, after) !== mark
  if (after > newest || isOther) return { ...pictureNews(database, { after: 0, limit }), anew: true }
  const rows = database
    .prepare<[number, number], { number: number; sha256: string; held: number }>(
      'SELECT "number", "sha256", "held" FROM "PictureNews" WHERE "number" > ? ORDER BY "number" LIMIT ?',
    )
    .all(after, limit)
  const next = rows.at(-1)?.number ?? after
  const markThere = markAt(database, next)
  return {
    news: rows.map(({ sha256, held }) => ({ sha256, held: held === 1 })),
    next,
    more: next < newest,
    ...(markThere !== undefined && { mark: markThere }),
  }
}

const markAt = (database: Database, number: number): string | undefined =>
  database
    .prepare<[number], string>('SELECT "mark" FROM "PictureNews" WHERE "number" = ?')
    .pluck()
    .get(number)
