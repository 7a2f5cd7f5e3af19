import { cleanup, render, screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { bodyFacts } from '@/app/record/bodyFacts'
import { recordName, recordTitle } from '@/app/record/recordTitle'
import { fieldOf } from '@/app/record/recordWords'
import type { About } from '@/app/record/shown'
import { Facts } from '@/app/ui/paper/Facts'
import { unitLabel } from '@/lib/core/pressure'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { sampleIds, sampleRecords } from '../../records/samples'

const file = foldTeamFile(sampleRecords)
const about = (unit: About['unit'] = 'inH2O'): About => ({
  unit,
  names: new Map([['person-2', 'Bram Osterlo']]),
  kindOf: (id) => file.records.get(id)?.kind,
  recordAt: (id) => {
    const found = file.records.get(id)
    return found && { href: `/record?id=${id}`, words: recordName(found.kind, found.entry.body) }
  },
})
const show = (kind: string, body: Record<string, unknown>, unit?: About['unit']) => {
  cleanup()
  render(<Facts facts={bodyFacts(kind, Object.freeze(body), about(unit))} />)
}
const factOf = (name: string) => screen.getByText(name, { selector: 'dt' }).nextElementSibling!
const sample = (id: string) => {
  const { kind, body } = sampleRecords.find((record) => record.id === id)!
  return [kind, body] as const
}

/** Every number at every depth under a key that holds pressures. */
function pressuresIn(value: unknown, key = ''): number[] {
  if (typeof value === 'number')
    return /pascals$|^tolerance|^samples|^lowest|^highest|^pulls/i.test(key) ? [value] : []
  if (Array.isArray(value)) return value.flatMap((each) => pressuresIn(each, key))
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([inner, each]) => pressuresIn(each, inner))
}

/** Every word on the page, taken text by text, so that two that stand side by side are never read as one. */
function wordsOn(place: Node): string[] {
  const texts = document.createTreeWalker(place, NodeFilter.SHOW_TEXT)
  const words: string[] = []
  while (texts.nextNode()) words.push(...(texts.currentNode.nodeValue ?? '').split(/\s+/))
  return words
}

test.each(sampleRecords.map(({ kind, version, id, body }) => ({ kind, version, id, body })))(
  'a $kind ($id) shows no key as a label, no id, no pressure without its unit, and nothing as an object',
  ({ kind, body }) => {
    for (const unit of ['inH2O', 'Pa', 'mbar'] as const) {
      show(kind, body, unit)
      const names = screen.getAllByRole('term').map((name) => name.textContent ?? '')
      for (const name of names) expect(name).toMatch(/^[A-Z]/)
      expect(names.join(' ')).not.toMatch(/pascals|metres/i)
      for (const [key, value] of Object.entries(body))
        if (pressuresIn(value, key).length > 0)
          expect(factOf(fieldOf(kind, key).name).textContent).toContain(unitLabel[unit])
      const words = wordsOn(document.body)
      expect(
        words.filter((word) => /^[a-z]+([A-Z][a-z]+)+:?$|^(inH2O|undefined|NaN|\[object)$/.test(word)),
      ).toEqual([])
      const text = words.join(' ')
      expect(text).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-7/)
      for (const pascals of pressuresIn(body).filter((each) => !Number.isInteger(each)))
        expect(text).not.toContain(String(pascals))
    }
  },
)

test('a report is shown in the reader’s unit with the other small beside it, its words as words, its records linked', () => {
  show(...sample(sampleIds.labelReport))
  expect(factOf('Number').textContent).toBe('0.58 in. w.c. 144 Pa')
  expect(factOf('Tolerance above').textContent).toBe('0.05 in. w.c. 12.5 Pa')
  expect(factOf('Letter for letter').textContent).toBe('-.58±.05 WC CLOSE')
  expect(factOf('Closes or opens').textContent).toBe('Closes (make\u00a0point)')
  expect(factOf('Unit of the source').textContent).toBe('in. w.c.')
  expect(factOf('Rests on').textContent).toBe('Rating label on the factory switch')
  expect(factOf('Between').textContent).toBe('between the port and the room')
  const part = screen.getByRole('link', { name: 'OM-7731' })
  expect(part.getAttribute('href')).toBe(`/record?id=${sampleIds.oldPart}`)
  expect(screen.getByRole('link', { name: 'Low fire' })).toBeDefined()
  show(...sample(sampleIds.labelReport), 'Pa')
  expect(factOf('Number').textContent).toBe('144 Pa 0.58 in. w.c.')
})

test('ranges and proof of a report are said as the cards say them', () => {
  show(...sample(sampleIds.supportReport))
  expect(factOf('Elevations that it holds for').textContent).toBe('up to 4,501 ft (1,372 m)')
  expect(factOf('Revisions that it holds for').textContent).toBe('revision A to C')
  expect(factOf('Proof').textContent).toBe(
    'What it is: call referenceWhom was rung: Orrinmoor technical lineTheir reference: T-5512',
  )
  expect(factOf('Read back digit by digit?').textContent).toBe('Yes')
})

test('a furnace’s elevation and vent are said in feet, with metres beside them', () => {
  show(...sample(sampleIds.furnace))
  expect(factOf('Elevation').textContent).toBe('4,790 ft (1,460 m)')
  expect(factOf('Length of the vent').textContent).toBe('25 ft (8 m)')
})

test('a gauge’s smallest step keeps its digits in every unit', () => {
  show(...sample(sampleIds.gauge))
  expect(factOf('Smallest step').textContent).toBe('0.001 in. w.c. 0.25 Pa')
  expect(factOf('Full scale').textContent).toBe('20.00 in. w.c. 4982 Pa')
})

test('what a withholding takes away is named as it is called where it was', () => {
  show(...sample(sampleIds.withholding))
  expect(factOf('What is withheld').textContent).toBe('Site')
})

test('a kind and fields that nobody has named are readable all the same', () => {
  show('weather log', {
    outdoorGustStrength: 'strong',
    vacuumPascals: 144.4715678,
    roofMetres: 3.048,
    takenById: sampleIds.gauge,
    lostId: '01920000-0000-7000-8000-00000000dead',
    byTheWindow: true,
    seenBy: [],
    extra: { innerSense: 'suction', tolerancePascals: 12.4544455 },
  })
  expect(screen.getAllByRole('term').map((name) => name.textContent)).toEqual([
    'Outdoor gust strength',
    'Vacuum',
    'Roof',
    'Taken by',
    'Lost',
    'By the window',
    'Seen by',
    'Extra',
  ])
  expect(factOf('Vacuum').textContent).toBe('0.58 in. w.c. 144 Pa')
  expect(factOf('Roof').textContent).toBe('10 ft (3 m)')
  expect(factOf('Taken by').textContent).toBe('G-07')
  expect(factOf('Lost').textContent).toBe('A record that is not on this device')
  expect(factOf('Seen by').textContent).toBe('None')
  expect(factOf('Extra').textContent).toBe('Inner sense: suctionTolerance: 0.05 in. w.c. 12.5 Pa')
  expect(recordTitle('weather log', {})).toBe('Weather log')
})

test.each([
  ['maker', { name: 'Orrinmoor' }, 'Maker: Orrinmoor', 'Orrinmoor'],
  [
    'report',
    { source: 'data plate', pascals: 144 },
    'Report: Data plate on the unit',
    'Report: Data plate on the unit',
  ],
  ['furnace', { model: 'LF2-080-B' }, 'Furnace: LF2-080-B', 'LF2-080-B'],
  ['visit', { on: '2026-01-23' }, 'Visit: 23 Jan 2026', 'Visit: 23 Jan 2026'],
  ['settlement', { pascals: 144 }, 'Dispute settled', 'Dispute settled'],
])('recordTitle and recordName of a %s', (kind, body, title, name) => {
  expect([recordTitle(kind, body), recordName(kind, body)]).toEqual([title, name])
})
