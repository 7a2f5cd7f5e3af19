import { render, screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { ChartFrame } from '@/app/ui/charts/ChartFrame'
import { ControlChart, type ControlMonth } from '@/app/ui/charts/ControlChart'

const months: readonly ControlMonth[] = [
  { month: '2026-01', share: 0.2, look: 'settled', few: false, says: 'many' },
  { month: '2026-02', share: 1, look: 'settled', few: true, says: 'few' },
  { month: '2026-03', share: 0.5, look: 'open', few: true, says: 'few and open' },
]

const drawn = (name: string) => {
  const mark = screen.getByRole('link', { name }).querySelector('circle')!
  return { radius: Number(mark.getAttribute('r')), classes: mark.getAttribute('class') ?? '' }
}

test('a month of few jobs is drawn small and hollow, whether it is settled or open', () => {
  render(
    <ControlChart
      months={months}
      width={640}
      label="Share"
      linkOf={() => ({ href: '#', isOpen: false, onClick: () => {} })}
    />,
  )
  expect(drawn('many').radius).toBe(5)
  expect(drawn('many').classes).toContain('point')
  for (const name of ['few', 'few and open']) {
    expect(drawn(name).radius).toBe(2.5)
    expect(drawn(name).classes).toContain('empty')
    expect(drawn(name).classes).not.toContain('point')
  }
  expect(drawn('few and open').classes).toContain('hollow')
})

test('a picture, its key and its legend are one figure, so that no page of paper parts them', () => {
  render(
    <ChartFrame above={<ul aria-label="Key" />} legend="How it is read">
      {() => <svg role="img" aria-label="Picture" />}
    </ChartFrame>,
  )
  const figure = screen.getByRole('figure')
  for (const part of [
    screen.getByRole('list', { name: 'Key' }),
    screen.getByText('How it is read'),
    screen.getByRole('img', { name: 'Picture' }),
  ])
    expect(figure.contains(part)).toBe(true)
})
