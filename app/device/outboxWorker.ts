import type { Device } from '@/lib/device/device'
import { isOnItsWay } from '@/lib/device/picture/pictures'

/** As the browser names its offer to send when there is a signal again (WICG Background Synchronization). */
type SyncRegistration = ServiceWorkerRegistration & { sync?: { register(tag: string): Promise<void> } }

/** The name under which the worker waits for a signal; app/sw.js/worker.js knows it too. */
const tag = 'outbox'

/** Leaves what a device holds back for want of a signal to the service worker too, for the time when no page is open. */
export function leaveToWorker(device: Device): void {
  let leftTo = 0
  device.subscribe(() => {
    const { waiting, pictures, trouble } = device.state()
    const left = trouble?.why === 'no signal' ? waiting.length + pictures.filter(isOnItsWay).length : 0
    if (left > 0 && left !== leftTo) void sendInTheBackground()
    leftTo = left
  })
}

/**
 * Asks the browser to wake the service worker once there is a signal, also when no page is open any more, and have it
 * send what waits. Only some browsers can; elsewhere the next page that opens sends it.
 */
async function sendInTheBackground(): Promise<void> {
  const workers = navigator.serviceWorker as ServiceWorkerContainer | undefined
  const registration = (await workers?.getRegistration()) as SyncRegistration | undefined
  try {
    await registration?.sync?.register(tag)
  } catch (cause) {
    // A person can forbid it, and a private mode does. What waits is sent by a page all the same.
    console.info('The browser does not send in the background:', cause)
  }
}

/** Calls when the worker has sent something, so that the page settles what was answered. @returns ends it */
export function whenWorkerHasSent(onSent: () => void): () => void {
  const workers = navigator.serviceWorker as ServiceWorkerContainer | undefined
  const hear = ({ data }: MessageEvent): void => {
    if (data === tag) onSent()
  }
  workers?.addEventListener('message', hear)
  return () => workers?.removeEventListener('message', hear)
}
