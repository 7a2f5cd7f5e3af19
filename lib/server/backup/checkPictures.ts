import Database from 'better-sqlite3'
import type { Manifest } from './manifest'

/**
 * Holds the pictures that were copied to what the database notes of them: the hash of the bytes that the server keeps.
 * A picture that is damaged where the server keeps it is copied as it is, and named: better one bad picture than no
 * back-up.
 *
 * @returns the paths of those that are damaged, and of those whose file was not there
 */
export function checkPictures(
  file: string,
  files: Manifest['files'],
): { damaged: string[]; missing: string[] } {
  const db = new Database(file, { readonly: true, fileMustExist: true })
  try {
    const noted = db
      .prepare<[], { sha256: string; storedSha256: string }>('SELECT "sha256", "storedSha256" FROM "Picture"')
      .all()
    const copied = new Map(files.map(({ path, sha256 }) => [path.split('/').at(-1), { path, sha256 }]))
    return {
      damaged: noted.flatMap(({ sha256, storedSha256 }) => {
        const copy = copied.get(sha256)
        return copy !== undefined && copy.sha256 !== storedSha256 ? [copy.path] : []
      }),
      missing: noted.flatMap(({ sha256 }) => (copied.has(sha256) ? [] : [sha256])),
    }
  } finally {
    db.close()
  }
}
