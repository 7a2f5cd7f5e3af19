import type { Device } from '@/lib/device/device'
import { listenForNews } from '@/lib/device/news'
import { pauseMs } from '@/lib/device/pause'
import { whenWorkerHasSent } from './outboxWorker'

/**
 * Keeps a device in step with the server while its page is open: at once when there is news, a signal or somebody
 * looks; from time to time else, less often while it fails.
 *
 * @param device the one that is open now, if one is
 * @returns ends it
 */
export function keepInStep(device: () => Device | undefined): () => void {
  let failures = 0
  let timer: ReturnType<typeof setTimeout> | undefined
  let isOver = false
  const sync = async (): Promise<void> => {
    clearTimeout(timer)
    await device()?.sync()
    failures = device()?.state().trouble === undefined ? 0 : failures + 1
    clearTimeout(timer)
    if (!isOver) timer = setTimeout(sync, pauseMs(failures, Math.random()))
  }
  const syncNow = (): void => void sync()
  // Only while the page is in sight: what nobody looks at needs nothing at once.
  let stopListening: (() => void) | undefined
  const look = (): void => {
    stopListening?.()
    stopListening = document.visibilityState === 'visible' ? listenForNews(syncNow) : undefined
  }
  const onVisible = (): void => {
    look()
    if (document.visibilityState === 'visible') syncNow()
  }
  look()
  timer = setTimeout(sync, pauseMs(0, 0))
  window.addEventListener('online', syncNow)
  document.addEventListener('visibilitychange', onVisible)
  const stopHearing = whenWorkerHasSent(syncNow)
  return () => {
    isOver = true
    clearTimeout(timer)
    stopListening?.()
    stopHearing()
    window.removeEventListener('online', syncNow)
    document.removeEventListener('visibilitychange', onVisible)
  }
}
