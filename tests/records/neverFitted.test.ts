import { describe, expect, test } from 'vitest'
import { neverFittedInDone, neverFittedPart } from '@/lib/records/neverFitted'

const generic = 'adjustable or general-purpose switch'
const jumper = 'jumper or bypass'

describe('neverFittedPart(text)', () => {
  test.each([
    ['UNIVERSAL ADJUSTABLE SWITCH', generic],
    ['universal adjustable switch, set to 0.30', generic],
    ['ADJUSTABLE 0.1-1.0 UNIV-9', generic],
    ['UNIV-9', generic],
    ['generic_switch', generic],
    ['Hanger, adjustable switch', generic],
    ['jumper wire', jumper],
    ['jumper on the terminals', jumper],
    ['universal switch with hose', generic],
    ['universal pressure switch, hoses', generic],
    ['Alligator jumper, 10 cm', jumper],
  ])('%s is refused', (text, what) => {
    expect(neverFittedPart(text)).toBe(what)
  })

  test.each([
    undefined,
    '',
    'OM-8802',
    'switch, not adjustable',
    'non-adjustable switch OM-8802',
    'two adjustable hangers, strap',
    'universal pipe sealant',
    'bypass humidifier damper',
    'University Ave. counter, hose 1 m',
    'Drain hose, 1 m, from the van',
  ])('%s is let by', (text) => {
    expect(neverFittedPart(text)).toBeUndefined()
  })
})

describe('neverFittedInDone(text)', () => {
  test.each([
    ['put a jumper across it and fitted a universal switch', jumper],
    ['fitted a universal switch', generic],
    ['Fitted new adjustable one', generic],
    ['replaced the switch with a generic one', generic],
    ['swapped it for an adjustable switch', generic],
    ['Universal switch fitted', generic],
    ['Removed the old one, installed universal switch', generic],
    ['Set the adjustable switch to 0.30', generic],
    ['jumpered the switch', jumper],
    ['We bypassed it for the night', jumper],
    ['Cleared trap; left a jumper in', jumper],
    ['ran it with a jumper', jumper],
  ])('“%s” says that one was put in', (text, what) => {
    expect(neverFittedInDone(text)).toBe(what)
  })

  test.each([
    'removed the jumper',
    'Jumper taken out',
    'Jumper out, factory switch in, wires back on its terminals',
    'Jumper out, wires back on the switch',
    'took the universal switch out, factory one in',
    'Took out the jumper that somebody had put across the switch',
    'Replaced the universal switch with the factory part',
    'Swapped the adjustable switch for the factory one',
    'fitted the factory switch instead of the universal one',
    'Factory switch in, the adjustable one taken along',
    'put the factory switch in place of the adjustable one',
    'Found a universal switch fitted, left off',
    'Universal switch fitted by the owner, taken out',
    'The switch was jumpered when we came: cleared it',
    'No jumper fitted',
    'Fitted adjustable hangers under the vent',
    'Set the vent straight on universal brackets',
    'Jumper out, vent and trap put right behind it',
    'Put the wires back after removing the jumper',
    'Left the jumper off',
    'Adjusted the gas pressure and made adjustments to the vent',
    'Drain cleared',
    '',
  ])('“%s” does not', (text) => {
    expect(neverFittedInDone(text)).toBeUndefined()
  })
})
