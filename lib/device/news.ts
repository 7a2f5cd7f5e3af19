/** How long after the server has refused, or has ended the connection for good, it is asked again, in milliseconds. */
const askAgainMs = 60_000

/** The pages of one browser find each other under this name. */
const sharedName = 'inchwater news'

/**
 * Has a screen told at once when the server has something new. What it is comes by syncing, also after a break: each
 * time the connection stands again, there may be something that was missed. Where the browser or the server has no
 * such connection, nothing happens, and asking from time to time goes on.
 *
 * All pages of a browser share one connection, because a browser holds few to one server (six, over HTTP/1.1): whoever
 * has the lock listens and tells the others, and when that page goes the next one takes over. A browser that lacks
 * locks or channels, on plain http for instance, has a connection a page.
 * @param onNews called for everything new, and whenever the connection stands
 * @returns ends it
 */
export function listenForNews(onNews: () => void): () => void {
  if (typeof EventSource === 'undefined') return () => {}
  const locks = typeof BroadcastChannel === 'undefined' ? undefined : globalThis.navigator?.locks
  return locks === undefined ? connect(onNews) : share(onNews, locks)
}

function share(onNews: () => void, locks: LockManager): () => void {
  const pages = new BroadcastChannel(sharedName)
  pages.addEventListener('message', onNews)
  const over = new AbortController()
  const listenForAll = (): Promise<void> =>
    new Promise((done) => {
      const end = connect(() => {
        onNews()
        pages.postMessage('news')
      })
      over.signal.addEventListener('abort', () => {
        end()
        pages.close()
        done()
      })
    })
  locks.request(sharedName, { signal: over.signal }, listenForAll).catch((cause: unknown) => {
    // Ended before its turn came: then nobody waits for it. Anything else leaves this page its own connection.
    if (over.signal.aborted) return pages.close()
    console.warn('The pages of this browser cannot share their connection.', cause)
    const end = connect(onNews)
    over.signal.addEventListener('abort', end)
  })
  return () => over.abort()
}

function connect(onNews: () => void): () => void {
  let source: EventSource | undefined
  let again: ReturnType<typeof setTimeout> | undefined
  const open = (): void => {
    source = new EventSource('/api/events')
    source.addEventListener('open', onNews)
    source.addEventListener('news', onNews)
    source.addEventListener('error', () => {
      // After a break the browser comes back by itself; after a refusal it does not.
      if (source?.readyState === EventSource.CLOSED) again = setTimeout(open, askAgainMs)
    })
  }
  open()
  return () => {
    clearTimeout(again)
    source?.close()
    source = undefined
  }
}
