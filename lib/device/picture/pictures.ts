import { failure, type Result, success } from '@/lib/core/result'
import type { PictureType } from '@/lib/records/kinds/photo'
import type { OwnDatabase } from '../database'
import { toldByDone } from '../toldByDone'
import type { PreparedPicture } from './prepare'

/** A picture that is on this device, without its bytes. */
export type KeptPicture = {
  sha256: string
  mediaType: PictureType
  bytes: number
  /** When it came here, ISO 8601. */
  keptAt: string
  /** Why the server did not take it, for good. */
  refusal?: string
}

/** What other parts of the device know of a picture, by its hash. */
export type PictureFate = {
  /** A record of this device names it, sent or not. */
  named: boolean
  /** The server holds it. */
  held: boolean
  /** A manager has withheld it. */
  withheld: boolean
}

/** A picture that the next contact sends: a record names it, and nothing speaks against it. */
export const isOnItsWay = ({ named, held, withheld, refusal }: KeptPicture & PictureFate): boolean =>
  named && !held && !withheld && refusal === undefined

/** A picture that the server refused and that its person has to deal with. */
export const isRefused = ({ held, refusal }: KeptPicture & PictureFate): boolean =>
  refusal !== undefined && !held

/** So many pictures that the server holds stay here too, to be looked at without a signal (common practice). */
const copiesKept = 40

/** A picture that no record names belongs to a form that somebody may come back to, for so long, in milliseconds. */
const draftMs = 30 * 24 * 60 * 60_000

/** The pictures of one person on this device: those on their way, those of unsaved forms, and the newest that were sent. */
export type Pictures = {
  kept(): readonly KeptPicture[]
  /** Looks what is here now: another page of this browser may have taken a photo. */
  lookAgain(): Promise<void>
  /** Keeps a picture here. What there is no room for is a problem in a sentence, and nothing else is lost. */
  keep(picture: PreparedPicture, fateOf: (sha256: string) => PictureFate): Promise<Result<KeptPicture>>
  read(sha256: string): Promise<Blob | undefined>
  /** Notes why the server will never take it, or, with none, that it may be tried again. */
  refuse(sha256: string, refusal: string | undefined): Promise<void>
  drop(hashes: readonly string[]): Promise<void>
  /** Drops what was withheld, old copies of what the server holds, and what no record and no fresh form names. */
  tidy(fateOf: (sha256: string) => PictureFate): Promise<void>
}

export async function openPictures(database: OwnDatabase, now: () => Date): Promise<Pictures> {
  const allKept = async (): Promise<KeptPicture[]> => (await database.getAll('pictures')).sort(oldestFirst)
  let kept = await allKept()

  const drop = async (hashes: readonly string[]): Promise<void> => {
    if (hashes.length === 0) return
    const both = database.transaction(['pictures', 'pictureBytes'], 'readwrite')
    for (const sha256 of hashes) {
      void both.objectStore('pictures').delete(sha256)
      void both.objectStore('pictureBytes').delete(sha256)
    }
    await both.done
    kept = kept.filter(({ sha256 }) => !hashes.includes(sha256))
  }

  /** In one transaction: there are never facts without bytes, or bytes that nobody knows of. */
  const write = async (picture: KeptPicture, bytes: ArrayBuffer): Promise<boolean> => {
    try {
      const both = database.transaction(['pictures', 'pictureBytes'], 'readwrite')
      void both.objectStore('pictureBytes').put(bytes, picture.sha256).catch(toldByDone)
      void both.objectStore('pictures').put(picture).catch(toldByDone)
      await both.done
      return true
    } catch (cause) {
      if (cause instanceof DOMException && cause.name === 'QuotaExceededError') return false
      throw cause
    }
  }

  return {
    kept: () => kept,
    async lookAgain() {
      kept = await allKept()
    },
    async keep({ blob, sha256, mediaType, bytes }, fateOf) {
      const known = kept.find((picture) => picture.sha256 === sha256)
      if (known !== undefined) return success(known)
      const picture = { sha256, mediaType, bytes, keptAt: now().toISOString() }
      const content = await blob.arrayBuffer()
      let written = await write(picture, content)
      if (!written) {
        await drop(kept.flatMap((each) => (fateOf(each.sha256).held ? [each.sha256] : [])))
        written = await write(picture, content)
      }
      if (!written) {
        return failure(
          'no-room',
          'This device has no room left for the picture. What you typed is kept: save the record without it, or free some space and take it again.',
        )
      }
      kept = [...kept, picture]
      return success(picture)
    },
    async read(sha256) {
      const picture = kept.find((each) => each.sha256 === sha256)
      const bytes = picture && (await database.get('pictureBytes', sha256))
      return bytes && new Blob([bytes], { type: picture.mediaType })
    },
    async refuse(sha256, refusal) {
      const picture = kept.find((each) => each.sha256 === sha256)
      if (picture === undefined) return
      const { refusal: before, ...rest } = picture
      const told = refusal === undefined ? rest : { ...rest, refusal }
      await database.put('pictures', told)
      kept = kept.map((each) => (each.sha256 === sha256 ? told : each))
    },
    drop,
    async tidy(fateOf) {
      const held = kept.filter(({ sha256 }) => fateOf(sha256).held)
      const tooMany = held.slice(0, Math.max(0, held.length - copiesKept))
      const gone = kept.filter(({ sha256, keptAt }) => {
        const { named, withheld } = fateOf(sha256)
        return withheld || (!named && now().getTime() - Date.parse(keptAt) > draftMs)
      })
      await drop([...new Set([...tooMany, ...gone].map(({ sha256 }) => sha256))])
    },
  }
}

const oldestFirst = (one: KeptPicture, other: KeptPicture): number =>
  one.keptAt < other.keptAt ? -1 : one.keptAt > other.keptAt ? 1 : 0
