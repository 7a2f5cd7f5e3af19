import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { listenForNews } from '@/lib/device/news'

/** A connection whose events the test sends itself. */
class PretendSource extends EventTarget {
  static readonly CLOSED = 2
  static opened: PretendSource[] = []
  readyState = 0
  constructor(readonly url: string) {
    super()
    PretendSource.opened.push(this)
  }
  close() {
    this.readyState = PretendSource.CLOSED
  }
  send(what: string) {
    this.dispatchEvent(new Event(what))
  }
}

/** Locks as the pages of one browser share them: one holder, the others in the order in which they asked. */
class PretendLocks {
  private waiting: (() => void)[] = []
  private held = false
  request(_name: string, { signal }: { signal: AbortSignal }, work: () => Promise<void>): Promise<void> {
    return new Promise((resolve, reject) => {
      const begin = () => {
        this.held = true
        work().then(() => {
          this.held = false
          this.waiting.shift()?.()
          resolve()
        }, reject)
      }
      if (!this.held) return begin()
      this.waiting.push(begin)
      signal.addEventListener('abort', () => {
        this.waiting = this.waiting.filter((each) => each !== begin)
        reject(signal.reason)
      })
    })
  }
}

/** A channel that reaches every other of its name at once. */
class PretendChannel extends EventTarget {
  static all = new Set<PretendChannel>()
  constructor(readonly name: string) {
    super()
    PretendChannel.all.add(this)
  }
  postMessage(data: string) {
    for (const other of PretendChannel.all)
      if (other !== this && other.name === this.name)
        other.dispatchEvent(new MessageEvent('message', { data }))
  }
  close() {
    PretendChannel.all.delete(this)
  }
}

/** A browser whose pages can share. */
function sharing(): void {
  vi.stubGlobal('navigator', { locks: new PretendLocks() })
  vi.stubGlobal('BroadcastChannel', PretendChannel)
}
const settled = () => vi.advanceTimersByTimeAsync(0)

beforeEach(() => {
  PretendSource.opened = []
  PretendChannel.all.clear()
  vi.stubGlobal('BroadcastChannel', undefined)
  vi.stubGlobal('EventSource', PretendSource)
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

test('listenForNews(onNews) says so whenever the connection stands, and for everything new', () => {
  const onNews = vi.fn()
  listenForNews(onNews)
  const [source] = PretendSource.opened
  expect(source!.url).toBe('/api/events')
  source!.send('open')
  source!.send('news')
  expect(onNews).toHaveBeenCalledTimes(2)
})

test('listenForNews(onNews) leaves a break to the browser, and asks again itself after a refusal', () => {
  listenForNews(vi.fn())
  const [source] = PretendSource.opened
  source!.send('error')
  vi.runAllTimers()
  expect(PretendSource.opened).toHaveLength(1)
  source!.readyState = PretendSource.CLOSED
  source!.send('error')
  vi.runAllTimers()
  expect(PretendSource.opened).toHaveLength(2)
})

test('listenForNews(onNews) hears and asks nothing more once it is ended', () => {
  const end = listenForNews(vi.fn())
  const [source] = PretendSource.opened
  source!.readyState = PretendSource.CLOSED
  source!.send('error')
  end()
  vi.runAllTimers()
  expect(PretendSource.opened).toHaveLength(1)
})

test('listenForNews(onNews) does nothing in a browser that has no such connection', () => {
  vi.stubGlobal('EventSource', undefined)
  expect(() => listenForNews(vi.fn())()).not.toThrow()
})

describe('the pages of one browser', () => {
  test('share one connection, and all of them hear what it says', async () => {
    sharing()
    const pages = Array.from({ length: 8 }, () => vi.fn())
    for (const onNews of pages) listenForNews(onNews)
    await settled()
    expect(PretendSource.opened).toHaveLength(1)
    PretendSource.opened[0]!.send('news')
    expect(pages.map((onNews) => onNews.mock.calls.length)).toEqual(pages.map(() => 1))
  })

  test('hand the connection on when the page that has it goes, and forget a page that never had it', async () => {
    sharing()
    const [first, second, third] = [vi.fn(), vi.fn(), vi.fn()]
    const endFirst = listenForNews(first)
    const endSecond = listenForNews(second)
    listenForNews(third)
    await settled()
    endSecond()
    await settled()
    expect(PretendSource.opened).toHaveLength(1)
    endFirst()
    await settled()
    expect(PretendSource.opened[0]!.readyState).toBe(PretendSource.CLOSED)
    expect(PretendSource.opened).toHaveLength(2)
    PretendSource.opened[1]!.send('open')
    expect([first, second, third].map(({ mock }) => mock.calls.length)).toEqual([0, 0, 1])
  })

  test('have a connection each where the browser cannot share, and where sharing is refused', async () => {
    listenForNews(vi.fn())
    listenForNews(vi.fn())
    expect(PretendSource.opened).toHaveLength(2)
    PretendSource.opened = []
    sharing()
    const warned = vi.spyOn(console, 'warn').mockImplementation(() => {})
    const request = () => Promise.reject(new Error('not here'))
    vi.stubGlobal('navigator', { locks: { request } })
    const end = listenForNews(vi.fn())
    await settled()
    expect(PretendSource.opened).toHaveLength(1)
    expect(warned).toHaveBeenCalledOnce()
    warned.mockClear()
    end()
    expect(PretendSource.opened[0]!.readyState).toBe(PretendSource.CLOSED)
  })
})
