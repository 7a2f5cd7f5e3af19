import { expect, test } from 'vitest'
import { fittedSentence } from '@/app/foundFitted/fittedWords'

test.each([
  ['not known', 'not known', 'Nobody knows when it was fitted, or by whom.'],
  ['Unknown', ' Not known ', 'Nobody knows when it was fitted, or by whom.'],
  ['not known', 'us', 'We fitted it; nobody knows when.'],
  ['not known', 'somebody else', 'Somebody else fitted it; nobody knows when.'],
  ['not known', 'another company', 'Another company fitted it; nobody knows when.'],
  ['December 2024', 'not known', 'Fitted December 2024; nobody knows by whom.'],
  ['December 2024', 'us', 'Fitted December 2024, by us.'],
  ['not known', undefined, 'Nobody knows when it was fitted; by whom is withheld.'],
  ['2023', undefined, 'Fitted 2023; by whom is withheld.'],
])('fittedSentence of “%s” and “%s”', (fittedWhen, fittedBy, sentence) => {
  expect(fittedSentence(Object.freeze({ fittedWhen, fittedBy }))).toBe(sentence)
})
