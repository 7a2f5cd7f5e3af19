import { render, screen } from '@testing-library/react'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import type { Column } from '@/app/ui/waterColumn/column'
import { describeColumn } from '@/app/ui/waterColumn/describeColumn'
import { WaterColumn } from '@/app/ui/waterColumn/WaterColumn'
import { accessibilityFaults } from '../accessibilityFaults'

const column: Column = {
  unit: 'inH2O',
  sense: 'suction',
  marks: [
    {
      action: 'closes',
      pascals: 144,
      toleranceAbove: 12,
      toleranceBelow: 12,
      limit: 'nominal',
      standing: { level: 'Verified', asOf: '2026-01-12' },
    },
    {
      action: 'opens',
      pascals: 105,
      limit: 'maximum',
      standing: { level: 'In dispute', asOf: '2026-01-12' },
    },
  ],
  reading: { pascals: 110, uncertaintyPascals: 5 },
  earlier: [{ pascals: 100 }],
}

test('WaterColumn is one image whose name is its description', async () => {
  const { container } = render(<WaterColumn {...column} />)
  expect(screen.getByRole('img', { name: describeColumn(column) })).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('WaterColumn writes a word and a level beside every line', () => {
  const { container } = render(<WaterColumn {...column} />)
  const words = [...container.querySelectorAll('text')].map((text) => text.textContent)
  expect(words).toEqual(
    expect.arrayContaining(['closes Verified', 'opens maximum In dispute', '0.44 reading', 'earlier']),
  )
})

test('WaterColumn keeps the ids of two drawings apart, and refers to none that is missing', () => {
  const { container } = render(
    <>
      <WaterColumn {...column} />
      <WaterColumn {...column} />
    </>,
  )
  const ids = [...container.querySelectorAll('[id]')].map(({ id }) => id)
  expect(ids.length).toBeGreaterThan(6)
  expect(new Set(ids).size).toBe(ids.length)
  const used = [...container.innerHTML.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id)
  expect(used.length).toBeGreaterThan(0)
  for (const id of used) expect(ids).toContain(id)
})

test('WaterColumn is drawn on the server as on the device, without a style attribute', () => {
  const served = renderToStaticMarkup(<WaterColumn {...column} />)
  const { container } = render(<WaterColumn {...column} />)
  const withoutIds = (html: string) => html.replaceAll(/(id="|url\(#)_?[A-Za-z0-9]*_[a-z0-9]+_/gi, '$1')
  const inBrowser = document.createElement('div')
  inBrowser.innerHTML = served
  expect(withoutIds(inBrowser.innerHTML)).toBe(withoutIds(container.innerHTML))
  expect(served).not.toContain(' style=')
})

test('WaterColumn grows taller when many labels need the room', () => {
  const heightOf = (shown: Column) => {
    const { container } = render(<WaterColumn {...shown} />)
    return Number(container.querySelector('svg')?.getAttribute('viewBox')?.split(' ')[3])
  }
  const many = Array.from({ length: 8 }, () => column.marks).flat()
  expect(heightOf({ ...column, marks: many })).toBeGreaterThan(heightOf(column) * 2)
})

test('WaterColumn draws a reading higher the more suction it is', () => {
  const levelOf = (pascals: number) => {
    const { container } = render(<WaterColumn {...column} reading={{ pascals, uncertaintyPascals: 1 }} />)
    return Number(
      / ([\d.]+)H/.exec(container.querySelector('[class*="level"]')?.getAttribute('d') ?? '')?.[1],
    )
  }
  expect(levelOf(120)).toBeLessThan(levelOf(60))
  expect(levelOf(60)).toBeLessThan(levelOf(-20))
})
