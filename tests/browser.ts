import { existsSync } from 'node:fs'

const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** The browser that the tests drive: the one that CHROMIUM names, or the first found in a usual place. */
export function browserPath(): string | undefined {
  const named = process.env.CHROMIUM
  if (named !== undefined && named !== '') return named
  return usualPlaces.find((place) => existsSync(place))
}

/** Flags for a quiet, sandboxless Chromium on a machine without a network. */
export const browserFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]
