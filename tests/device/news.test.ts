import { afterEach, beforeEach, expect, test, vi } from 'vitest'
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

beforeEach(() => {
  PretendSource.opened = []
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
