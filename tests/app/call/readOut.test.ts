import { expect, test } from 'vitest'
import { sayAnswer, sayBundle, sayCode, sayQuestion } from '@/app/call/readOut'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'

/** 249.08891 Pa to the inch of water (NIST SP 811, App. B.8); 1372 m are 4501 ft. */
const body: ReportBody = {
  positionId: '01920000-0000-7000-8000-000000000003',
  asWritten: 'opens at minus point six five',
  action: 'opens',
  limit: 'nominal',
  pascals: 0.65 * 249.08891,
  sense: 'suction',
  unit: 'inH2O',
  decimals: 2,
  kind: 'one-port',
  between: 'port and room',
  tap: 'not stated',
  stage: 'low fire',
  source: 'distributor',
  readBack: true,
  proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-91' },
  saidOn: '2026-01-06',
}

test('sayCode(code) speaks digits as words and tells a letter from the digit it looks like', () => {
  expect(sayCode('LF2-08O')).toBe('L F two dash zero eight letter O')
  expect(sayCode('i1 /x.5')).toBe('letter I one space stroke X point five')
})

test('sayBundle(report) speaks the whole bundle, digit by digit', () => {
  expect(sayBundle(body)).toBe('negative zero point six five inches, opens, low fire, port to room')
})

test('sayBundle(report) speaks tolerance, limit, elevation and part number where they are stated', () => {
  const stated = {
    ...body,
    limit: 'maximum' as const,
    toleranceAbove: 0.05 * 249.08891,
    toleranceBelow: 0.05 * 249.08891,
    elevationBand: { toMetres: 1372 },
    partNumber: 'OM-1',
  }
  expect(sayBundle(stated)).toBe(
    'at most negative zero point six five inches, plus or minus zero point zero five, opens, low fire, port to room, ' +
      'up to four five zero one feet, part number letter O M dash one',
  )
  expect(sayBundle({ ...body, toleranceAbove: 0.05 * 249.08891 })).toContain(
    'plus zero point zero five, minus zero point zero zero',
  )
})

test('sayAnswer(report, file, switch, level) never speaks a number without its level, source and date', () => {
  expect(
    sayAnswer(
      { id: 'r', body, by: 'bram', at: '2026-01-07T08:00:00.000Z', waiting: false },
      foldTeamFile([]),
      'Low fire',
      'Supported',
    ),
  ).toBe(
    'Low fire: negative zero point six five inches, opens, low fire, port to room. Supported. ' +
      'Distributor, read back, Hobb & Lane counter, ref. C-91, 6 Jan 2026.',
  )
})

test('sayAnswer(…, lookAgain) says right behind the level what makes the number look like a slip', () => {
  expect(
    sayAnswer(
      { id: 'r', body, by: 'bram', at: '2026-01-07T08:00:00.000Z', waiting: false },
      foldTeamFile([]),
      'Low fire',
      'Unverified',
      ['The two may have been swapped. Ask which is which.'],
    ),
  ).toContain('Unverified. Look again: The two may have been swapped. Ask which is which. Distributor,')
})

test('sayQuestion(request, switch) leaves out what nobody said', () => {
  expect(sayQuestion({ printed: 'nothing', needs: [] }, 'Low fire')).toBe(
    'Rating wanted for: Low fire. Printed on the switch: nothing.',
  )
  expect(
    sayQuestion(
      { model: 'A1', serial: 'B2', printed: 'PR .60', measured: '0.4', needs: ['infants'] },
      'Low fire',
    ),
  ).toBe(
    'Rating wanted for: Low fire. Model A one. Serial B two. Printed on the switch: PR .60. Measured: 0.4. Why now: infants.',
  )
})
