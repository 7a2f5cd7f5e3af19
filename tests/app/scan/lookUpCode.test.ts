import { describe, expect, test } from 'vitest'
import { formatWords, shownText } from '@/app/scan/codeWords'
import { lookUpCode } from '@/app/scan/lookUpCode'
import { answering, readScanAddress } from '@/app/scan/scanAddress'
import { buildFindIndex } from '@/lib/core/find'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { findEntries } from '@/lib/records/view/findEntries'
import { held } from '../setup/fakeDevice'
import { equipmentRecords, ids } from '../setup/smallFile'

const code = '0123456789A2'
const look = (text: string, more: Parameters<typeof held>[0] = []) => {
  const file = foldTeamFile([...equipmentRecords, ...held(more).map((record) => ({ ...record, seq: 90 }))])
  return lookUpCode(file, buildFindIndex(findEntries(file)), text)
}
const tagOnMill = ['01920000-0000-7000-8000-0000000000f0', 'tag', { code, furnaceId: ids.furnace }] as const
const keys = (found: ReturnType<typeof lookUpCode>) =>
  found.is === 'number' ? { same: found.same.map(({ key }) => key), near: found.near.length } : found.is

describe('lookUpCode(file, index, text)', () => {
  test('a part number on file is found as the switch that it belongs to, dashes and look-alikes apart', () => {
    expect(keys(look('OM-7731'))).toEqual({ same: [`position ${ids.low}`], near: 0 })
    expect(keys(look('om773I'))).toEqual({ same: [`position ${ids.low}`], near: 0 })
  })

  test('a serial number on file is found as its furnace', () => {
    expect(keys(look('S2204-118'))).toEqual({ same: [`furnace ${ids.furnace}`], near: 0 })
  })

  test('a number near one on file is never taken for it', () => {
    const found = look('OM-7737')
    expect(found).toMatchObject({ is: 'number', same: [] })
    expect(found.is === 'number' && found.near.length).toBeGreaterThan(0)
  })

  test('a tag is found by its link, by the code typed off it, and whichever name the server had', () => {
    for (const text of [`https://old-name.example/t?c=${code}`, '0123-4567-89a2', 'o123 4567 89A2'])
      expect(look(text, [[...tagOnMill]])).toMatchObject({
        is: 'tag',
        code,
        standing: { is: 'on a furnace', furnace: { id: ids.furnace } },
      })
  })

  test('a tag that nobody has stuck on is a tag all the same', () => {
    expect(look(`https://x.example/t?c=${code}`)).toMatchObject({
      is: 'tag',
      standing: { is: 'on none yet' },
    })
    expect(look('0123-4567-89A2')).toMatchObject({ is: 'tag', standing: { is: 'on none yet' } })
  })

  test('a part whose number could be a tag’s code is the part', () => {
    const part = {
      partNumber: '0123-4567-89A2',
      class: 'factory',
      fieldAdjustable: false,
      makerId: ids.maker,
      positionIds: [ids.low],
      listedIn: 'Page 1',
    }
    const found = look('0123456789A2', [['01920000-0000-7000-8000-0000000000f1', 'part', part]])
    expect(keys(found)).toEqual({ same: [`position ${ids.low}`], near: 0 })
  })

  test('a tag’s code with a slip is said to be one', () => {
    expect(look('0123-4567-89A3')).toMatchObject({
      is: 'number',
      misread: expect.stringContaining('misread'),
    })
    expect(look('OM-7731')).not.toHaveProperty('misread')
  })

  test('anything may stand in a code: a page elsewhere, nothing on file, four thousand characters', () => {
    expect(keys(look('https://elsewhere.example/om-7731'))).not.toBe('tag')
    expect(keys(look('')).toString()).toBeDefined()
    expect(keys(look('7'.repeat(4000)))).toMatchObject({ same: [] })
  })
})

test('shownText(text) shows what has no letter of its own, and cuts what is too long to read', () => {
  expect(shownText('01\u001d10AB\n')).toBe('01␝10AB␊')
  expect(shownText('x'.repeat(300))).toMatch(/^x{200} … \(300 characters\)$/)
})

test('formatWords(format) calls a kind of code the same, whichever reader named it', () => {
  expect(['QRCode', 'qr_code', 'Code128', 'code_128', 'EAN-13'].map(formatWords)).toEqual([
    'QR code',
    'QR code',
    'Code 128',
    'Code 128',
    'EAN-13',
  ])
})

test('readScanAddress(query) leads back only to a page of this application, which is told what was read', () => {
  const read = (query: string) => readScanAddress(new URLSearchParams(query))
  expect(read('take=part&then=/report?position=1')).toEqual({
    back: { to: '/report?position=1', wants: 'part' },
  })
  expect(read('take=part&then=//elsewhere.example')).toEqual({})
  expect(read('take=cookies&then=/report')).toEqual({})
  expect(read('furnace=f1')).toEqual({ furnaceId: 'f1' })
  expect(answering('/report?position=1', 'read', 'A&B 1')).toBe('/report?position=1&read=A%26B+1')
})
