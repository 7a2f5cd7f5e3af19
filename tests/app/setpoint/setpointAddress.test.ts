import { expect, test } from 'vitest'
import { readSetpointAddress, setpointHref } from '@/app/setpoint/setpointAddress'

const read = (query: string) => readSetpointAddress(new URLSearchParams(`position=p1&${query}`))

test.each([
  ['elevation=1158.24', 1158.24],
  ['elevation=-1.524', -1.524],
  ['elevation=99999', undefined],
  ['elevation=-501', undefined],
  ['elevation=high', undefined],
  ['elevation=', undefined],
  ['', undefined],
])(
  'readSetpointAddress of “%s” gives an elevation of %s metres: none where no furnace can stand',
  (query, metres) => {
    expect(read(query)?.elevationMetres).toBe(metres)
  },
)

test('an address leads back to itself, on the page that it is for', () => {
  const address = { positionId: 'p1', furnaceId: 'f1', elevationMetres: 152.4, serial: 'K 7' }
  for (const page of ['/setpoint', '/compare'] as const) {
    const href = setpointHref(address, page)
    expect(href.startsWith(`${page}?`)).toBe(true)
    expect(readSetpointAddress(new URLSearchParams(href.split('?')[1]))).toMatchObject(address)
  }
})
