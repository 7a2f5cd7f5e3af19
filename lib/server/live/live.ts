import { dataFolder, theLog } from '../database'
import { type Listeners, makeListeners } from './listeners'

// On globalThis, because development reloads modules, and the server's own process is built apart from its routes.
const kept = globalThis as typeof globalThis & { inchwaterLive?: Map<string, Live> }
kept.inchwaterLive ??= new Map()

/** How often, while anybody listens, the log is asked for what another process wrote, and sessions are looked after. */
const everyMs = 15_000

type Live = { listeners: Listeners; timer?: ReturnType<typeof setInterval> }

const liveOf = (folder = dataFolder()): Live => {
  const live = kept.inchwaterLive!.get(folder) ?? { listeners: makeListeners() }
  kept.inchwaterLive!.set(folder, live)
  return live
}

/** Who listens to the team's log. */
export const theListeners = (): Listeners => liveOf().listeners

/** Tells every open screen whose role may see it that the log has something new. */
export function announceNews(): void {
  const { listeners } = liveOf()
  if (listeners.size() > 0) listeners.announce((role) => theLog().newestSeq(role))
}

/** Tells every open screen that a picture has come or gone: that is no entry of the log. */
export const announcePictures = (): void => liveOf().listeners.nudge()

/** Somebody was signed out, taken off, or given another role: each open screen looks after its session at once. */
export const sessionsChanged = (): Promise<void> => theListeners().check()

/** Keeps the clock going while anybody listens. */
export function keepListening(): void {
  const live = liveOf()
  live.timer ??= setInterval(() => {
    if (live.listeners.size() === 0) {
      clearInterval(live.timer)
      live.timer = undefined
      return
    }
    announceNews()
    void live.listeners.check()
  }, everyMs)
  live.timer.unref()
}

/** Ends every open connection: at the server's end, and between tests. */
export function endListening(): void {
  for (const { listeners, timer } of kept.inchwaterLive!.values()) {
    clearInterval(timer)
    listeners.endAll()
  }
  kept.inchwaterLive!.clear()
}
