import { readdirSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { offlinePages } from '@/app/device/offlinePages'

/** People, tokens, exports, and what is set aside for managers, are a matter of the server: nothing is done there without a signal. */
const onlineOnly = ['/api-help', '/export', '/people', '/set-aside', '/tokens']

test('every page of the team opens without a signal, but those that are a matter of the server', () => {
  const pages = readdirSync('app/(team)', { recursive: true })
    .map(String)
    .filter((file) => path.basename(file) === 'page.tsx')
    .map((file) => `/${path.dirname(file)}`.replace(/\/\.$/, '/'))
  const kept = offlinePages.filter((page) => page !== '/danger')
  expect([...kept].sort()).toEqual(pages.filter((page) => !onlineOnly.includes(page)).sort())
})
