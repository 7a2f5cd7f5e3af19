import { v7 as uuidv7 } from 'uuid'
import type { Result } from '@/lib/core/result'
import type { RecordEnvelope } from '@/lib/records/envelope'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import { withheldSince } from '@/lib/records/fold/withheldSince'
import { versionOf } from '@/lib/records/kindVersions'
import { maySeeLookUps } from '@/lib/records/lookUps'
import { pictureState } from '@/lib/records/view/photos'
import type { PictureNews } from './answers'
import { isLocked } from './contactAge'
import { openFileDatabase, openOwnDatabase } from './database'
import { handOver, keyFact } from './handOver'
import { handOverForOthers } from './handOverForOthers'
import { appendToPages, emptyLog, fedUpTo, readLog, replaceInPages } from './logPages'
import { freshTeamLookUps, keepLookUp, readTeamLookUps, sendKeptLookUps, type TeamLookUps } from './lookUps'
import { inPlaceOf, type SaidAt } from './mending'
import { nextBatch, type OutboxItem, settleOutbox } from './outbox'
import { ownMissingIn, ownToSendAgain } from './ownToSendAgain'
import { type KeptPicture, openPictures, type PictureFate } from './picture/pictures'
import type { PreparedPicture } from './picture/prepare'
import { sendPictures } from './picture/sendPictures'
import { toldByDone } from './toldByDone'
import {
  type Called,
  type Contact,
  fetchChanges,
  fetchMe,
  fetchPeople,
  type Person,
  sendBatch,
} from './transport'

/** What the screens see of the device at one moment. A new object whenever anything in it changes. */
export type DeviceState = {
  me: Person
  file: TeamFile
  /** Names by person id, of everybody who ever recorded. */
  names: ReadonlyMap<string, string>
  /** When the log was last asked and answered to its end, ISO 8601; undefined before the first time. */
  freshAt: string | undefined
  /** Set while the device has been without contact for so long that the file may not be read: what is said is kept. */
  locked: boolean
  /** How many records of the log are on this device. */
  arrived: number
  waiting: readonly OutboxItem[]
  refused: readonly OutboxItem[]
  /** The pictures that are on this device, oldest first. */
  pictures: readonly (KeptPicture & PictureFate)[]
  /** What the whole team looks up, as the server told it last; nobody is told who does not choose the calls. */
  lookUps: TeamLookUps | undefined
  /** Why the last contact failed, if it did. */
  trouble: Extract<Called<never>, { ok: false }> | undefined
  /**
   * Set once a manager has ended this person's session here: `handing over` until the server holds what waited,
   * `emptying` until the server knows that nothing of the person's is on this device any more, then `emptied`.
   */
  ended?: 'handing over' | 'emptying' | 'emptied'
}

/** A record about to be said. Its id may be made beforehand, so that another of the same batch can name it. */
export type NewRecord = { kind: string; body: Record<string, unknown>; id?: string }

/** The id of a record about to be said. */
export const newRecordId = (): string => uuidv7()

export type Device = {
  state(): DeviceState
  subscribe(listener: () => void): () => void
  /**
   * Puts records in the outbox and in the file at once, all of them or none, and tries to send. Answers with their
   * ids. @throws RangeError when a kind is none
   */
  addAll(records: readonly NewRecord[], more?: AddedBy): Promise<string[]>
  /** The same for a single record. */
  add(kind: string, body: Record<string, unknown>): Promise<string>
  /** Sends what waits and fetches what is new. Safe to call at any time; one run at a time. */
  sync(): Promise<void>
  /** Puts a refused record back among those that wait, once what it was refused for may be gone. */
  sendAgain(id: string): Promise<void>
  /**
   * Puts what was typed for a refused record back into its form, unless something newer stands there.
   * @returns the address of the form; undefined when it is not known any more
   */
  mend(id: string): Promise<string | undefined>
  /** Takes a refused record off the device, once its person has dealt with it. */
  dropRefused(id: string): Promise<void>
  /**
   * Keeps a picture on this device, before any record names it. It is sent once a record that names it is in the log.
   * @returns a problem in a sentence where there is no room for it
   */
  keepPicture(picture: PreparedPicture): Promise<Result<KeptPicture>>
  /** The bytes of a picture that is on this device. */
  readPicture(sha256: string): Promise<Blob | undefined>
  /** Takes a picture off this device: one that no record names, or that the server refused. */
  dropPicture(sha256: string): Promise<void>
  /** Has a picture that was refused sent again. */
  sendPictureAgain(sha256: string): Promise<void>
  /** Counts that a position's setpoint was opened, once a day; it is sent with the next contact. */
  noteLookUp(positionId: string): Promise<void>
  readDraft(key: string): Promise<unknown>
  writeDraft(key: string, value: unknown): Promise<void>
  clearDraft(key: string): Promise<void>
  close(): void
}

/**
 * `from`: where they were said. `instead`: the refused record that they mend, which goes in the same step. `told`: hears
 * now and then how many of many are in the store; all of them go again if one of them can't be kept.
 */
export type AddedBy = { from?: SaidAt; instead?: string | undefined; told?: (kept: number) => void }

/** How far the latest time seen may lag behind the clock, in milliseconds: it is not written at each try. */
const latestLagMs = 10 * 60_000

/** What goes in one request: far below what the server takes, so that a weak signal gets it through. */
const batchLimits = { records: 200, bytes: 1_000_000 }

/** How many records are asked for at a time: many over a sound signal, few over one that breaks off. */
const pageSizes = { least: 25, most: 1000 }

/** How many records are put into the store between two turns of the screen. */
const screenEvery = 500

export type DeviceOptions = {
  me: Person
  deviceId: string
  now: () => Date
  /** The build of the program that runs here. */
  build?: string
}

/** Opens one person's store on this device: the team file, the outbox and the drafts. */
export async function openDevice({ me, deviceId, now, build = 'unknown' }: DeviceOptions): Promise<Device> {
  let taken = false
  const onTaken = (): void => {
    taken = true
    show({ trouble: { ok: false, why: 'newer page', message: 'A newer page has taken the store over.' } })
  }
  const [fileDatabase, ownDatabase] = await Promise.all([
    openFileDatabase(me.id, me.role, onTaken),
    openOwnDatabase(me.id, onTaken),
  ])
  const listeners = new Set<() => void>()
  let freshAt = (await fileDatabase.get('facts', 'freshAt')) as string | undefined
  let latestAt = (await fileDatabase.get('facts', 'latestAt')) as string | undefined
  let timeInFile = latestAt !== undefined
  let locked = isLocked({ freshAt, latestAt, now: now() })
  let {
    records: inLog,
    after,
    mark,
    picturesHeld,
    picturesAfter,
    picturesMark,
  } = locked ? emptyLog() : await readLog(fileDatabase)
  let outbox: OutboxItem[] = await ownDatabase.getAll('outbox')
  let lastOrder = outbox.reduce((highest, item) => Math.max(highest, item.order), 0)
  let othersEnded = false
  const pictures = await openPictures(ownDatabase, now)
  /** Held by the answer to a picture that was sent from here; the news that stands on the disk does not say so yet. */
  const heldByAnswer = new Set<string>()
  let leftToWorker = String((await fileDatabase.get('facts', 'picturesToSend')) ?? '')
  let current: DeviceState = {
    me,
    file: foldTeamFile([]),
    names: new Map(((await fileDatabase.get('facts', 'names')) as [string, string][] | undefined) ?? []),
    arrived: inLog.size,
    freshAt,
    locked,
    waiting: [],
    refused: [],
    pictures: [],
    lookUps: await readTeamLookUps(fileDatabase),
    trouble: undefined,
  }

  const show = (change: Partial<DeviceState>): void => {
    current = { ...current, ...change }
    for (const listener of listeners) listener()
  }
  const refold = (change: Partial<DeviceState> = {}): void => {
    const waiting = outbox.filter((item) => item.refusal === undefined)
    const own = waiting.filter((item) => !inLog.has(item.record.id)).map((item) => item.record)
    const refused = outbox.filter((item) => item.refusal !== undefined)
    const file = foldTeamFile([...(locked ? [] : inLog.values()), ...own], new Set(picturesHeld))
    show({ ...change, file, locked, waiting, refused, pictures: picturesIn(file) })
  }
  const showOutbox = (): void =>
    show({
      waiting: outbox.filter((item) => item.refusal === undefined),
      refused: outbox.filter((item) => item.refusal !== undefined),
    })
  const picturesIn = (file: TeamFile): DeviceState['pictures'] =>
    pictures.kept().map((picture) => ({ ...picture, ...fateIn(file)(picture.sha256) }))
  const fateIn = (file: TeamFile) => {
    const named = new Set([...file.photos.values()].map(({ body }) => body.sha256))
    for (const { record } of outbox) if (record.kind === 'photo') named.add(String(record.body.sha256))
    return (sha256: string): PictureFate => {
      const state = pictureState(file, sha256)
      return { named: named.has(sha256), held: state === 'held', withheld: state === 'withheld' }
    }
  }
  refold()

  async function addAll(
    said: readonly NewRecord[],
    { from, instead, told }: AddedBy = {},
  ): Promise<string[]> {
    await lookWhetherEmptied()
    if (isLeft()) throw new Error('A manager has signed this device out. Sign in again first.')
    const mended = outbox.find(({ record, refusal }) => record.id === instead && refusal !== undefined)
    const records = mended === undefined ? said : inPlaceOf(mended, said)
    const saidAt = now().toISOString()
    const items = records.map(({ kind, body, id = newRecordId() }) => {
      const version = versionOf(kind)
      if (version === undefined) throw new RangeError(`addAll: "${kind}" is no kind of record`)
      const record: RecordEnvelope = { id, kind, version, body, saidAt, author: me.id, device: deviceId }
      lastOrder += 1
      // What waits for the refused one goes after it, as before.
      const order = id === mended?.record.id ? mended.order : lastOrder
      return { id, record, order, ...(from === undefined ? {} : { saidAt: from }) }
    })
    const intoOutbox = ownDatabase.transaction('outbox', 'readwrite')
    if (mended !== undefined) void intoOutbox.store.delete(mended.record.id)
    for (const [at, item] of items.entries()) {
      const put = intoOutbox.store.put(item)
      // An old list is many thousands: now and then the screen has its turn, within the one transaction.
      if (at % screenEvery === screenEvery - 1) {
        await put
        told?.(at + 1)
      }
    }
    await intoOutbox.done
    outbox = [...outbox.filter((item) => item !== mended), ...items]
    refold()
    void sync()
    return items.map((item) => item.id)
  }

  const contact = (): Contact => ({ device: deviceId, waiting: outbox.length, build })

  async function send(): Promise<Called<unknown>> {
    let unfolded = false
    // Folded at the end: an old list goes in hundreds of batches, and each of them changes only what waits.
    const ended = (called: Called<unknown>): Called<unknown> => {
      if (unfolded) refold()
      return called
    }
    for (;;) {
      const items = nextBatch(outbox, batchLimits)
      if (items.length === 0) {
        if (!unfolded) return { ok: true, value: undefined }
        // Another tab may have put something there meanwhile.
        outbox = await ownDatabase.getAll('outbox')
        refold()
        unfolded = false
        continue
      }
      const called = await sendBatch(
        items.map((item) => item.record),
        now().toISOString(),
        contact(),
      )
      if (!called.ok) return ended(called)
      const { stored: taken, refused } = settleOutbox(items, called.value)
      // What came back by the log already is the log's own copy, perhaps with something withheld: it stays.
      const stored = taken.map(({ record, seq }) => inLog.get(record.id) ?? { ...record, seq })
      // The file first: a crash between the two sends the records once more, and the server knows them by id.
      const intoFile = fileDatabase.transaction(['records', 'facts'], 'readwrite')
      const fed = await fedUpTo(intoFile.objectStore('facts'))
      for (const record of stored) {
        // Up to there another tab has the log's own copies: nothing would take a second one out again.
        if (record.seq === undefined || record.seq > fed.after)
          void intoFile.objectStore('records').put(record)
      }
      await intoFile.done
      const outOfOutbox = ownDatabase.transaction('outbox', 'readwrite')
      for (const { id } of stored) void outOfOutbox.store.delete(id)
      for (const item of refused) void outOfOutbox.store.put({ ...item, id: item.record.id })
      await outOfOutbox.done
      for (const record of stored) inLog.set(record.id, record)
      const gone = new Set(stored.map(({ id }) => id))
      const refusals = new Map(refused.map((item) => [item.record.id, item]))
      outbox = outbox.flatMap((item) =>
        gone.has(item.record.id) ? [] : [refusals.get(item.record.id) ?? item],
      )
      showOutbox()
      unfolded = true
      if (stored.length + refused.length < items.length) return ended({ ok: true, value: undefined })
    }
  }

  let pageSize = pageSizes.most
  let mostNow = pageSizes.most
  async function fetchNew(): Promise<Called<unknown>> {
    let unshown = false
    for (;;) {
      const called = await fetchChanges(
        { after, mark },
        { after: picturesAfter, mark: picturesMark },
        pageSize,
        contact(),
      )
      if (!called.ok) {
        // Perhaps the answer was too long for the signal: less at a time gets through.
        pageSize = Math.max(Math.floor(pageSize / 2), pageSizes.least)
        mostNow = pageSize
        if (unshown) refold()
        return called
      }
      // Carefully up again, so that not every second page is too long once more.
      mostNow = Math.min(Math.ceil(mostNow * 1.25), pageSizes.most)
      pageSize = Math.min(pageSize * 2, mostNow)
      if (called.value.anew) {
        await beginAnew()
        unshown = true
        continue
      }
      const { records, next, more } = called.value
      const missing = ownMissingIn(called.value, { held: inLog.values(), me: me.id, after })
      // The server's news of pictures was numbered anew with its log: it is asked for from the start.
      const fromTheStart: PictureNews = { news: [], next: 0, anew: true }
      const pictureNews = missing.length > 0 ? fromTheStart : called.value.pictures
      if (missing.length > 0) await putBack(missing)
      const older = new Map(
        withheldSince(records, (id) => inLog.get(id)).map((record) => [record.id, record]),
      )
      const came = records.map((record) => {
        const blanked = older.get(record.id)
        older.delete(record.id)
        return blanked ?? record
      })
      const intoFile = fileDatabase.transaction(['records', 'pages', 'facts', 'picturesHeld'], 'readwrite')
      const fed = await fedUpTo(intoFile.objectStore('facts'))
      const sameLog = fed.after === after && fed.mark === mark
      if (!sameLog || fed.picturesAfter !== picturesAfter || fed.picturesMark !== picturesMark) {
        // Another tab has taken in what is new meanwhile, or begun anew.
        await readAnew()
        unshown = true
        continue
      }
      // Asked of the store and not of this tab's memory: another tab may have sent it.
      const sent = intoFile.objectStore('records')
      const sentHere = new Set(await sent.getAllKeys())
      for (const { id } of [...came, ...older.values(), ...missing])
        if (sentHere.has(id)) void sent.delete(id)
      await appendToPages(intoFile.objectStore('pages'), came)
      await replaceInPages(intoFile.objectStore('pages'), [...older.values()])
      const changed = [...came, ...older.values()]
      void intoFile.objectStore('facts').put(next, 'after')
      void intoFile.objectStore('facts').put(called.value.mark, 'mark')
      const { handOverKey } = called.value
      if (handOverKey !== undefined) void intoFile.objectStore('facts').put(handOverKey, keyFact)
      if (pictureNews !== undefined) {
        const store = intoFile.objectStore('picturesHeld')
        if (pictureNews.anew) void store.clear()
        for (const { sha256, held } of pictureNews.news)
          void (held ? store.put(true, sha256) : store.delete(sha256))
        void intoFile.objectStore('facts').put(pictureNews.next, 'picturesAfter')
        void intoFile.objectStore('facts').put(pictureNews.mark, 'picturesMark')
      }
      await intoFile.done
      for (const record of changed) inLog.set(record.id, record)
      for (const { id } of missing) inLog.delete(id)
      after = next
      mark = called.value.mark
      othersEnded = called.value.othersEnded ?? false
      if (pictureNews?.anew) picturesHeld.clear()
      for (const { sha256, held } of pictureNews?.news ?? []) {
        heldByAnswer.delete(sha256)
        held ? picturesHeld.add(sha256) : picturesHeld.delete(sha256)
      }
      if (pictureNews !== undefined) ({ next: picturesAfter, mark: picturesMark } = pictureNews)
      unshown ||= changed.length > 0 || missing.length > 0 || (pictureNews?.news.length ?? 0) > 0
      show({ arrived: inLog.size })
      if (more) continue
      // The news is told to its end: what it does not say went with a back-up that was restored.
      if (pictureNews !== undefined) {
        for (const sha256 of heldByAnswer) picturesHeld.delete(sha256)
        unshown ||= heldByAnswer.size > 0
        heldByAnswer.clear()
      }
      // Folded once, at the end: a long file arrives in many pages.
      if (unshown) refold()
      unshown = false
      // Asked once more after whatever came: by that the server hears that it has arrived here.
      if (records.length === 0) return { ok: true, value: undefined }
    }
  }

  /**
   * The server went back to a back-up: this person's own records go into the outbox once more, and the file is fetched
   * from the first entry. Nothing is lost that was stored after the back-up and is still on a device. Which pictures the
   * server holds is asked from the start too: its news was numbered anew since, and says nothing of what went with it.
   */
  async function beginAnew(): Promise<void> {
    await putBack(inLog.values())
    const ofFile = fileDatabase.transaction(['records', 'pages', 'facts', 'picturesHeld'], 'readwrite')
    for (const store of ['records', 'pages', 'picturesHeld'] as const) void ofFile.objectStore(store).clear()
    for (const fact of ['after', 'mark', 'picturesAfter', 'picturesMark'])
      void ofFile.objectStore('facts').delete(fact)
    await ofFile.done
    inLog.clear()
    picturesHeld.clear()
    after = 0
    mark = undefined
    picturesAfter = 0
    picturesMark = undefined
    refold({ arrived: 0 })
  }

  /** Takes over what stands in the store. */
  async function readAnew(): Promise<void> {
    ;({
      records: inLog,
      after,
      mark,
      picturesHeld,
      picturesAfter,
      picturesMark,
    } = await readLog(fileDatabase))
  }

  /**
   * Puts this person's own among records that the server has lost into the outbox. They are taken out of the file after
   * that: a crash between the two sends them once more, and the server knows them by id.
   */
  async function putBack(lost: Iterable<HeldRecord>): Promise<void> {
    const items = ownToSendAgain(lost, { me: me.id, waiting: outbox, lastOrder })
    const intoOutbox = ownDatabase.transaction('outbox', 'readwrite')
    for (const item of items) void intoOutbox.store.put({ ...item, id: item.record.id })
    await intoOutbox.done
    outbox = [...outbox, ...items]
    lastOrder += items.length
    again = true
  }

  async function fetchNames(): Promise<Called<unknown>> {
    const called = await fetchPeople()
    if (!called.ok) return called
    const names = new Map(called.value.map((person) => [person.id, person.name]))
    await fileDatabase.put('facts', [...names], 'names')
    show({ names })
    return called
  }

  /** Another person may have signed in in this browser since: then nothing is sent and nothing is fetched for this one. */
  async function checkSession(): Promise<Called<unknown>> {
    const called = await fetchMe()
    if (!called.ok || called.value.id === me.id) return called
    const message = `${called.value.name} is signed in here now. What ${me.name} recorded waits for ${me.name}.`
    return { ok: false, why: 'signed out', message }
  }

  /** What waits is handed over, and nothing of the person's stays: neither on the disk nor on the screen. */
  async function leaveDevice(): Promise<void> {
    show({ ended: 'handing over' })
    const called = await handOver({
      own: ownDatabase,
      file: fileDatabase,
      contact: (waiting) => ({ ...contact(), waiting }),
      now,
      limits: batchLimits,
      onHandedOver: () => forgetAll('emptying'),
    })
    show(called.ok ? { ended: 'emptied', trouble: undefined } : { trouble: called })
  }

  function forgetAll(ended: 'emptying' | 'emptied'): void {
    inLog.clear()
    picturesHeld.clear()
    outbox = []
    after = 0
    refold({ ended, arrived: 0, freshAt: undefined, names: new Map(), lookUps: undefined })
  }

  /** From here on nothing is kept for this person on this page. */
  const isLeft = (): boolean => current.ended === 'emptying' || current.ended === 'emptied'

  /**
   * Another page may have handed over and emptied what this person has here, perhaps for somebody else who is signed in.
   * It shows by the latest time seen: nothing else takes that out of the file once it is there.
   */
  async function lookWhetherEmptied(): Promise<void> {
    if (!timeInFile || current.ended !== undefined) return
    if ((await fileDatabase.get('facts', 'latestAt')) === undefined) forgetAll('emptied')
  }

  /** Keeps the latest time seen, and takes the file out of sight once contact is too long ago. */
  async function lookAtClock(): Promise<void> {
    const at = now()
    if (latestAt === undefined || at.getTime() - Date.parse(latestAt) > latestLagMs) {
      latestAt = at.toISOString()
      await fileDatabase.put('facts', latestAt, 'latestAt')
      timeInFile = true
    }
    if (locked || !isLocked({ freshAt, latestAt, now: at })) return
    locked = true
    refold()
  }

  /** The session stands, so the server will say what is new: what is on the disk is needed to understand it. */
  async function readLogIfLocked(): Promise<Called<unknown>> {
    if (locked && inLog.size === 0) await readAnew()
    return { ok: true, value: undefined }
  }

  let running: Promise<void> | undefined
  let again = false
  async function syncOnce(): Promise<void> {
    await lookWhetherEmptied()
    if (isOver()) return
    await lookAtClock()
    await leavePicturesToWorker()
    for (const step of [checkSession, readLogIfLocked, send, fetchNew, fetchNames]) {
      if (isOver()) return
      const called = await step()
      if (called.ok) continue
      return called.why === 'device ended' ? leaveDevice() : show({ trouble: called })
    }
    freshAt = now().toISOString()
    latestAt = freshAt
    const facts = fileDatabase.transaction('facts', 'readwrite')
    void facts.store.put(freshAt, 'freshAt')
    void facts.store.put(latestAt, 'latestAt')
    await facts.done
    if (locked) {
      locked = false
      refold()
    }
    show({ freshAt, trouble: undefined })
    // Last: records are small and get through a weak signal, and a picture is taken in only once its record is. What
    // goes wrong with the counting of look-ups keeps no picture back.
    for (const step of [shareLookUps, sendAndTidyPictures, handOverOthers]) {
      const called = await step()
      if (!called.ok) show({ trouble: called })
    }
  }

  /** This device may have been ended for somebody else who has a database here. */
  async function handOverOthers(): Promise<Called<unknown>> {
    if (!othersEnded) return { ok: true, value: undefined }
    const contactOf = (waiting: number): Contact => ({ ...contact(), waiting })
    return handOverForOthers({ me: me.id, contact: contactOf, now, limits: batchLimits })
  }

  const today = (): string => now().toISOString().slice(0, 10)
  /** Sends the look-ups that were counted here, and asks for the team's where this person may see them. */
  async function shareLookUps(): Promise<Called<unknown>> {
    const sent = await sendKeptLookUps(ownDatabase, today(), contact())
    if (!sent.ok || !maySeeLookUps.includes(me.role)) return sent
    const called = await freshTeamLookUps(fileDatabase, current.lookUps, now())
    if (called.ok && called.value !== current.lookUps) show({ lookUps: called.value })
    return called
  }

  /** The pictures that are to be sent, oldest first: of photos in the log, or of those on their way there too. */
  const picturesToSend = (photos: 'in the log' | 'on their way too'): KeptPicture[] => {
    const named = [...current.file.photos.values()].filter(
      ({ waiting }) => !waiting || photos !== 'in the log',
    )
    const hashes = new Set(named.map(({ body }) => body.sha256))
    const fateOf = fateIn(current.file)
    return pictures.kept().filter(({ sha256, refusal }) => {
      const { held, withheld } = fateOf(sha256)
      return hashes.has(sha256) && !held && !withheld && refusal === undefined
    })
  }

  /** Writes down which pictures the service worker may send in the background, so that the rules for it stand here alone. */
  async function leavePicturesToWorker(): Promise<void> {
    const hashes = picturesToSend('on their way too').map(({ sha256 }) => sha256)
    if (String(hashes) !== leftToWorker) await fileDatabase.put('facts', hashes, 'picturesToSend')
    leftToWorker = String(hashes)
  }

  async function sendAndTidyPictures(): Promise<Called<unknown>> {
    await pictures.lookAgain()
    await pictures.tidy(fateIn(current.file))
    const called = await sendPictures(picturesToSend('in the log'), pictures, (sha256) => {
      heldByAnswer.add(sha256)
      picturesHeld.add(sha256)
      refold()
    })
    show({ pictures: picturesIn(current.file) })
    await leavePicturesToWorker()
    return called
  }
  let closed = false
  const isOver = (): boolean => taken || closed || current.ended === 'emptied'
  async function sync(): Promise<void> {
    if (isOver()) return
    if (running !== undefined) {
      again = true
      return running
    }
    running = (async () => {
      do {
        again = false
        await syncOnce().catch((cause) =>
          show({ trouble: { ok: false, why: 'store trouble', message: String(cause) } }),
        )
      } while (again && !isOver())
    })().finally(() => {
      running = undefined
    })
    return running
  }

  return {
    state: () => current,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    addAll,
    async add(kind, body) {
      const [id] = await addAll([{ kind, body }])
      return id!
    },
    sync,
    async sendAgain(id) {
      const item = outbox.find(({ record }) => record.id === id)
      if (item === undefined) throw new RangeError(`sendAgain: no record ${id} is in the outbox`)
      const { refusal, ...waiting } = item
      await ownDatabase.put('outbox', { ...waiting, id })
      outbox = await ownDatabase.getAll('outbox')
      refold()
      await sync()
    },
    async mend(id) {
      const item = outbox.find(({ record }) => record.id === id)
      if (item?.saidAt === undefined) return undefined
      const drafts = ownDatabase.transaction('drafts', 'readwrite')
      for (const [key, value] of item.saidAt.drafts) {
        if ((await drafts.store.getKey(key)) === undefined) void drafts.store.put(value, key)
      }
      await drafts.done
      return item.saidAt.address
    },
    async dropRefused(id) {
      await ownDatabase.delete('outbox', id)
      outbox = outbox.filter((item) => item.record.id !== id)
      refold()
    },
    async keepPicture(picture) {
      const kept = await pictures.keep(picture, fateIn(current.file))
      show({ pictures: picturesIn(current.file) })
      return kept
    },
    readPicture: (sha256) => pictures.read(sha256),
    async dropPicture(sha256) {
      await pictures.drop([sha256])
      show({ pictures: picturesIn(current.file) })
    },
    async sendPictureAgain(sha256) {
      await pictures.refuse(sha256, undefined)
      await sync()
    },
    noteLookUp: (positionId) => keepLookUp(ownDatabase, positionId, today()),
    readDraft: (key) => ownDatabase.get('drafts', key),
    async writeDraft(key, value) {
      // A form that goes from the screen writes once more: nothing may come behind the emptying.
      if (isLeft()) return
      // A page that is being left lives too short to answer that the value is in: the end is asked for with it.
      const writing = ownDatabase.transaction('drafts', 'readwrite')
      void writing.store.put(value, key).catch(toldByDone)
      writing.commit()
      await writing.done
    },
    async clearDraft(key) {
      await ownDatabase.delete('drafts', key)
    },
    close() {
      closed = true
      fileDatabase.close()
      ownDatabase.close()
    },
  }
}
