import { expect, test } from 'vitest'
import { nextAddress } from '@/app/door/nextAddress'

const origin = 'https://inchwater.example'

test('nextAddress keeps an address of this site, query included', () => {
  expect(nextAddress('/setpoint?position=1&elevation=900', origin)).toBe('/setpoint?position=1&elevation=900')
})

test.each([
  null,
  '//elsewhere.example',
  '/\\elsewhere.example',
  '/\t/elsewhere.example',
  '/\n/elsewhere.example',
  '/\r/elsewhere.example',
  'https://elsewhere.example/',
  'javascript:alert(1)',
  '/sign-in?next=/',
  'http://[',
])('nextAddress(%j) leads to Find', (asked) => {
  expect(nextAddress(asked, origin)).toBe('/')
})
