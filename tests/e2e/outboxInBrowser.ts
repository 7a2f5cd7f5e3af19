import type { Browser, BrowserContext, Page } from 'playwright-core'
import { v7 as uuidv7 } from 'uuid'
import type { DemoPerson } from '@/seed-demo/people'
import { openContext, phone, signIn } from './openBrowser'

/** The line that says that nothing waits. */
export const sent = (page: Page) => page.getByText('Everything is sent')

/** Tells a page that there is a signal, as the browser does. */
export const online = (page: Page) => page.evaluate(() => void window.dispatchEvent(new Event('online')))

/** A browser of its own with somebody signed in, the team file fetched and nothing waiting. */
export async function signedIn(
  browser: Browser,
  url: string,
  person: DemoPerson,
  worker: 'allow' | 'block' = 'block',
): Promise<Page> {
  const context = await openContext(browser, phone, 'light', worker)
  const page = await context.newPage()
  await signIn(page, url, person.name, person.password)
  await sent(page).waitFor()
  return page
}

export async function workerIsReady(page: Page): Promise<void> {
  await page.evaluate(async () => void (await navigator.serviceWorker.ready))
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
}

/** Every text in the log that begins so, in the log’s order. */
export async function inLog(context: BrowserContext, url: string, mark: string): Promise<string[]> {
  const names: string[] = []
  for (let after = 0, more = true; more; ) {
    const response = await context.request.get(`${url}/api/changes?after=${after}&limit=1000`)
    const { value } = (await response.json()) as {
      value: { records: { body: Record<string, unknown> }[]; next: number; more: boolean }
    }
    names.push(...value.records.flatMap(({ body }) => Object.values(body).map(String)))
    after = value.next
    more = value.more
  }
  return names.filter((text) => text.startsWith(mark))
}

/** Puts records into a person's outbox as the app keeps them, in a store of the layout that version 1 had. */
export async function fillOutbox(
  page: Page,
  url: string,
  author: string,
  names: readonly string[],
  layout: 1 | undefined,
): Promise<void> {
  const items = names.map((name, at) => {
    const id = uuidv7()
    const said = { saidAt: new Date().toISOString(), author, device: 'e2e-phone' }
    return { id, order: at + 1, record: { id, kind: 'maker', version: 1, body: { name }, ...said } }
  })
  // The danger sheet is outside the pages that open the store.
  await page.goto(`${url}/danger`)
  await page.evaluate(
    async ([name, items, layout]) => {
      if (layout !== undefined)
        await new Promise((done) => {
          indexedDB.deleteDatabase(name).onsuccess = done
        })
      const asked = indexedDB.open(name, layout)
      asked.onupgradeneeded = () => {
        asked.result.createObjectStore('outbox', { keyPath: 'id' })
        asked.result.createObjectStore('drafts')
      }
      await new Promise((done) => {
        asked.onsuccess = done
      })
      const writing = asked.result.transaction('outbox', 'readwrite')
      for (const item of items) writing.objectStore('outbox').put(item)
      await new Promise((done) => {
        writing.oncomplete = done
      })
      asked.result.close()
    },
    [`inchwater own ${author}`, items, layout] as const,
  )
}
