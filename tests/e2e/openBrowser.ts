import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { browserFlags, browserPath } from '../browser'

export const openBrowser = (): Promise<Browser> => {
  const executablePath = browserPath()
  if (executablePath === undefined)
    throw new Error('No browser was found: install Chromium, or name one in CHROMIUM.')
  return chromium.launch({ executablePath, args: browserFlags })
}

export const phone = { width: 390, height: 844 }
export const desk = { width: 1280, height: 900 }

/** Signs somebody in by the form, as a person would, and waits for Find. */
export async function signIn(page: Page, url: string, name: string, password: string): Promise<void> {
  await page.goto(`${url}/sign-in`)
  await page.getByLabel('Name').fill(name)
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('searchbox').waitFor()
}

/**
 * A new person's browser: nothing in it is shared with another's. Its pages are not kept for offline unless asked
 * for, because each new browser would fetch all of them.
 */
export const openContext = (
  browser: Browser,
  viewport = phone,
  colorScheme: 'light' | 'dark' = 'light',
  serviceWorkers: 'allow' | 'block' = 'block',
): Promise<BrowserContext> =>
  browser.newContext({
    viewport,
    colorScheme,
    serviceWorkers,
    reducedMotion: 'reduce',
    ignoreHTTPSErrors: true,
  })
