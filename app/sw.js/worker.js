// Keeps the pages of the team openable without a signal. It holds shells and their files only: no data of anybody,
// which lives in the browser's own store, and no answer of the API. `settings` is written above by the route.

/* global settings */

const cacheName = `inchwater ${settings.version}`

/**
 * The programs that read codes and labels weigh more than all pages together, and many people never need them. So they
 * are kept from when one is first used (or somebody asks for it beforehand), and outlive the builds: their addresses
 * have their own version in them.
 */
const readersName = 'inchwater readers'

/** The name under which a page asks for sending in the background; app/device/outboxWorker.ts knows it too. */
const outboxTag = 'outbox'

/** How many records go in one request. */
const batchSize = 100

/** How long a page may take over the network before the kept shell is shown, in milliseconds. */
const patienceMs = 4000

self.addEventListener('install', (event) => event.waitUntil(keepShells()))
self.addEventListener('activate', (event) => event.waitUntil(dropOldShells()))
self.addEventListener('sync', (event) => {
  if (event.tag === outboxTag) event.waitUntil(sendOutbox())
})
self.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin) return
  if (request.mode === 'navigate' && !pathname.startsWith('/api/')) event.respondWith(page(request))
  else if (settings.files.includes(pathname)) event.respondWith(file(request))
  else if (ofAReader(pathname)) event.respondWith(reader(request))
})

/** All or nothing: an installation that is cut off is tried again at the next visit. */
async function keepShells() {
  const cache = await caches.open(cacheName)
  const files = [...settings.files]
  // A few at a time, so that a phone with a weak signal can still be used meanwhile.
  while (files.length > 0) await cache.addAll(files.splice(0, 6))
  for (const pathname of settings.pages) {
    // Without cookies: the shell is nobody's.
    const response = await fetch(pathname, { credentials: 'omit', cache: 'no-store' })
    if (!response.ok) throw new Error(`${pathname} answered ${response.status}`)
    await cache.put(pathname, response)
  }
}

async function dropOldShells() {
  for (const name of await caches.keys()) {
    if (name !== cacheName && name !== readersName) await caches.delete(name)
  }
  await dropOldReaders()
  await self.clients.claim()
}

const ofAReader = (pathname) => settings.readers.some((folder) => pathname.startsWith(`${folder}/`))

async function dropOldReaders() {
  const cache = await caches.open(readersName)
  for (const request of await cache.keys()) {
    if (!ofAReader(new URL(request.url).pathname)) await cache.delete(request)
  }
}

/** A reader's file, kept once it has come whole. */
async function reader(request) {
  const cache = await caches.open(readersName)
  const kept = await cache.match(request, { ignoreVary: true })
  if (kept !== undefined) return kept
  const response = await fetch(request)
  if (response.status === 200) await cache.put(request, response.clone())
  return response
}

/**
 * The page over the network; the kept shell where that fails, is slow, or the server is in trouble. One that is not
 * kept is waited for as long as it takes; without a signal it is said that it needs one.
 */
async function page(request) {
  const { pathname } = new URL(request.url)
  const isKept = settings.pages.includes(pathname)
  const kept = async () => (isKept ? caches.match(pathname, { cacheName }) : undefined)
  const patience = new AbortController()
  const timer = isKept ? setTimeout(() => patience.abort(), patienceMs) : undefined
  try {
    const response = await fetch(request, { signal: patience.signal })
    return response.status < 500 ? response : ((await kept()) ?? response)
  } catch (failure) {
    const shell = await kept()
    if (shell !== undefined) return shell
    if (isKept) throw failure
    return needsASignal()
  } finally {
    // Only the first answer is waited for: a page that has begun to arrive is not cut off.
    clearTimeout(timer)
  }
}

/** What is shown for a page of ours that is not kept on the device. */
const needsASignal = () =>
  new Response(
    '<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>This page needs a signal</title><main><h1>This page needs a signal</h1><p>It is not kept on this device, because what it shows is on the server alone. Open it again when there is a signal. Nothing that you recorded is lost.</p><p><a href="/">Find</a> &middot; <a href="/cases">Cases</a> &middot; <a href="/waiting">What waits to be sent</a></p></main></html>',
    { status: 503, headers: { 'content-type': 'text/html; charset=utf-8' } },
  )

/** Files of a build never change under their name. */
async function file(request) {
  return (await caches.match(request, { cacheName, ignoreVary: true })) ?? fetch(request)
}

/**
 * Sends what waits of whoever is signed in, when the browser says that there is a signal, with no page open perhaps. It
 * only sends, and leaves the stores as they are: the server knows a record by its id, so the page sends it once more and
 * is answered "already stored", and the log's news tell it which pictures have come. That keeps the outbox's rules in one
 * place, and no two programs write to one store. Failing is told to the browser, which tries again later, each time
 * later.
 */
async function sendOutbox() {
  const answer = await fetch('/api/auth/me', { headers: { accept: 'application/json' } })
  // Nobody is signed in, or not any more: it waits for its person.
  if (answer.status === 401) return
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`)
  const { value: me } = await answer.json()
  const waiting = await waitingOf(me.id)
  for (let at = 0; at < waiting.length; at += batchSize) {
    const records = waiting.slice(at, at + batchSize)
    const sent = await fetch('/api/records', {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        'inchwater-device': records[0].device,
        'inchwater-waiting': String(waiting.length),
        'inchwater-build': settings.version,
      },
      body: JSON.stringify({ sentAt: new Date().toISOString(), records }),
    })
    if (sent.status === 401) return
    if (!sent.ok) throw new Error(`the server answered ${sent.status}`)
  }
  try {
    await sendPictures(me)
  } finally {
    for (const page of await self.clients.matchAll()) page.postMessage(outboxTag)
  }
}

/**
 * Sends the pictures that the page has written down as to be sent, after the records that name them and in its order.
 * One that the server does not take, or not yet, holds up no other: the page hears why when it sends it once more.
 */
async function sendPictures({ id, role }) {
  const own = `inchwater own ${id}`
  let notNow = false
  for (const sha256 of (await valueIn(`inchwater file ${id} ${role}`, 'facts', 'picturesToSend')) ?? []) {
    const picture = await valueIn(own, 'pictures', sha256)
    const bytes = await valueIn(own, 'pictureBytes', sha256)
    if (picture === undefined || bytes === undefined) continue
    const headers = { accept: 'application/json', 'content-type': picture.mediaType }
    const sent = await fetch(`/api/photos/${sha256}`, { method: 'PUT', headers, body: bytes })
    if (sent.status === 401) return
    if (sent.status >= 500 && sent.status !== 503) throw new Error(`the server answered ${sent.status}`)
    notNow ||= sent.status === 503
  }
  if (notNow) throw new Error('the server had no time for a picture')
}

/** The records that wait in a person's outbox, in the order in which they were said; refused ones wait for the person. */
async function waitingOf(personId) {
  const items = (await readFrom(`inchwater own ${personId}`, 'outbox', (outbox) => outbox.getAll())) ?? []
  return items
    .filter((item) => item.refusal === undefined)
    .sort((a, b) => a.order - b.order)
    .map((item) => item.record)
}

const valueIn = (name, store, key) => readFrom(name, store, (there) => there.get(key))

/**
 * What is read from a store; undefined where there is no such database or store. The database is open only while it is
 * read: a newer page can upgrade it while something is being sent, which over a weak signal takes minutes.
 */
async function readFrom(name, store, read) {
  const database = await openAsItIs(name)
  try {
    if (!database?.objectStoreNames.contains(store)) return undefined
    return await resultOf(read(database.transaction(store).objectStore(store)))
  } finally {
    database?.close()
  }
}

const resultOf = (asked) =>
  new Promise((resolve, reject) => {
    asked.onsuccess = () => resolve(asked.result)
    asked.onerror = () => reject(asked.error)
  })

/** A database of whatever version, or undefined where there is none: none is made. */
function openAsItIs(name) {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(name)
    asked.onupgradeneeded = () => asked.transaction.abort()
    asked.onsuccess = () => resolve(asked.result)
    asked.onerror = () => (asked.error.name === 'AbortError' ? resolve(undefined) : reject(asked.error))
  })
}
