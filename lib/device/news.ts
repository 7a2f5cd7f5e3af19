/** How long after the server has refused, or has ended the connection for good, it is asked again, in milliseconds. */
const askAgainMs = 60_000

/**
 * Has a screen told at once when the server has something new. What it is comes by syncing, also after a break: each
 * time the connection stands again, there may be something that was missed. Where the browser or the server has no
 * such connection, nothing happens, and asking from time to time goes on.
 * @param onNews called for everything new, and whenever the connection stands
 * @returns ends it
 */
export function listenForNews(onNews: () => void): () => void {
  if (typeof EventSource === 'undefined') return () => {}
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
