import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds serious or critical on a page as it is now, each with the element. WCAG 2.2 A and AA. */
export async function seriousFaults(page: Page): Promise<string[]> {
  await page.evaluate(axeSource)
  return page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: {
        run(
          context: Document,
          options: object,
        ): Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }>
      }
    }
    const { violations } = await axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    })
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`))
  })
}

/** Whether anything sticks out to the side, so that the page would have to be scrolled across. */
export const scrollsSideways = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth)

/** Said by the driver itself, where a test has asked it not to let pages be kept for offline. */
const workerBlocked = 'Service Worker registration blocked by Playwright'

/** Everything that a page complains of: errors on its console, and errors that nobody caught. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = []
  page.on('console', (message) => {
    const text = message.text()
    if (text === workerBlocked || !['error', 'warning'].includes(message.type())) return
    complaints.push(text)
  })
  page.on('pageerror', (error) => complaints.push(error.message))
  return complaints
}
