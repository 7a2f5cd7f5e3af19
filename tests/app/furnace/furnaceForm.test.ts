import fc from 'fast-check'
import { expect, test } from 'vitest'
import { freshFurnace, metresTyped, readFurnaceForm } from '@/app/furnace/furnaceForm'
import { heightWords } from '@/app/furnace/heightWords'

const typed = (text: string) => metresTyped(text, 'the elevation in feet', '4800')

test('metresTyped converts feet exactly: the international foot is 0.3048 m (NIST SP 811, App. B.8)', () => {
  expect(typed('4,800')).toEqual({ ok: true, value: 4800 * 0.3048 })
  expect(typed('1')).toEqual({ ok: true, value: 0.3048 })
  expect(typed('−282')).toEqual({ ok: true, value: -282 * 0.3048 })
})

test('an elevation that is typed in feet is said back as the same feet', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 29_000 }), (feet) => {
      const read = typed(String(feet))
      expect(read.ok && read.value !== undefined && heightWords(read.value)).toMatch(
        new RegExp(`^${feet.toLocaleString('en')} ft \\(`),
      )
    }),
    { seed: 11 },
  )
})

test('an empty elevation is left out, and an unreadable one is a gap at its field', () => {
  expect(typed('')).toEqual({ ok: true, value: undefined })
  expect(readFurnaceForm({ ...freshFurnace(), siteLabel: 'a', model: 'b', elevationFeet: 'high' })).toEqual({
    gaps: { elevationMetres: 'Type the elevation in feet as a number, for instance 4800.' },
  })
})

test('heightWords puts metres beside feet', () => {
  expect(heightWords(1463.04)).toBe('4,800 ft (1,463 m)')
  expect(heightWords(0)).toBe('0 ft (0 m)')
})
