import { expect, test } from 'vitest'
import { z } from 'zod'
import { whatDoesNotFit } from '@/lib/server/log/whatDoesNotFit'

const schema = z.strictObject({
  label: z.string('The label must be text.').max(5, 'The label is longer than 5 characters'),
  elevationBand: z.strictObject({ fromMetres: z.number() }).optional(),
  sizes: z.array(z.number().min(1)).optional(),
  action: z.enum(['closes', 'opens']).optional(),
})
const said = (sent: unknown) => {
  const parsed = schema.safeParse(sent)
  return parsed.success ? '' : whatDoesNotFit(parsed.error)
}

test.each<[unknown, string]>([
  [{ label: 7 }, 'In “label”: The label must be text.'],
  [{ label: 'too long' }, 'In “label”: The label is longer than 5 characters.'],
  [
    { label: 'a', elevationBand: { fromMetres: '7' } },
    'In “elevation band, from metres”: Expected number, received string.',
  ],
  [{ label: 'a', elevationBand: {} }, 'In “elevation band, from metres”: It is missing.'],
  [{ label: 'a', sizes: [1, 2, 0] }, 'In “sizes, item 3”: Expected number to be >=1.'],
  [{ label: 'a', action: 'makes' }, 'In “action”: Expected one of "closes"|"opens".'],
  [{ label: 'a', x: 1, y: 2 }, 'This program knows no “x” and no “y” here.'],
  [
    { label: 'a', w: 1, x: 1, y: 2, z: 3, ['k'.repeat(50)]: 4 },
    'This program knows no “w” and no “x” and no “y” here. And 2 more.',
  ],
  [{ label: 'a', ['k'.repeat(50)]: 4 }, `This program knows no “${'k'.repeat(40)}” here.`],
  ['text', 'Expected object, received string.'],
  [
    { label: 7, sizes: [0, 0, 0, 0] },
    'In “label”: The label must be text. In “sizes, item 1”: Expected number to be >=1. ' +
      'In “sizes, item 2”: Expected number to be >=1. And 2 more.',
  ],
])('whatDoesNotFit(error) says in words what is wrong: %j', (sent, sentence) => {
  expect(said(sent)).toBe(sentence)
})
