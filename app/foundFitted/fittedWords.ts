import { dangerSentence } from '@/lib/core/guard'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FoundFittedBody } from '@/lib/records/kinds/foundFitted'
import { dangerCodesOf } from '@/lib/records/view/unsuitable'

type What = FoundFittedBody['what']

/** What can be in although it should not be, in the order of the form, each with its line. */
export const whatWords: Readonly<Record<What, readonly [words: string, line: string]>> = {
  'adjustable or general-purpose switch': [
    'Adjustable or general-purpose switch',
    'Its setting can be changed, or no maker names it for this furnace.',
  ],
  'switch for another stage': ['Switch for another stage', 'A factory part, but of the other stage.'],
  'switch for another elevation': [
    'Switch for another elevation',
    'A factory part, but for another height above the sea.',
  ],
  'jumper or bypass': ['Jumper or bypass', 'Wire, tape, a prop, or a hose moved to defeat the switch.'],
  'not known': ['Not known yet', 'It does not look right, and nobody has said what it is.'],
}

const unproven = {
  'switch for another stage':
    'A switch for another stage is fitted: nobody has proven that it shows too little air.',
  'not known': 'Nobody has said what is fitted: nobody has proven that it shows too little air.',
} as const

/** Why what was found is a danger, in sentences: by what it was called, and by what the part on file is. */
export function fittedDangers(found: FoundFittedBody, file: TeamFile): string[] {
  const codes = dangerCodesOf(file, found)
  return codes.length > 0
    ? codes.map((code) => dangerSentence[code])
    : [found.what === 'switch for another stage' ? unproven[found.what] : unproven['not known']]
}

export const notProvenSafe = 'The furnace is not proven safe until the factory part is back.'

const isUnknown = (said: string): boolean => /^(not known|unknown|nobody knows|\?+)$/i.test(said.trim())

/**
 * When it was fitted and by whom, as a sentence. What was typed as not known is said to be known to nobody; who
 * fitted it may be withheld.
 *
 *   fittedSentence({ fittedWhen: 'not known', fittedBy: 'us' })  // 'We fitted it; nobody knows when.'
 */
export function fittedSentence({ fittedWhen, fittedBy }: Partial<FoundFittedBody>): string {
  const when = fittedWhen === undefined || isUnknown(fittedWhen) ? undefined : fittedWhen.trim()
  if (fittedBy === undefined)
    return `${when === undefined ? 'Nobody knows when it was fitted' : `Fitted ${when}`}; by whom is withheld.`
  if (isUnknown(fittedBy))
    return when === undefined
      ? 'Nobody knows when it was fitted, or by whom.'
      : `Fitted ${when}; nobody knows by whom.`
  if (when !== undefined) return `Fitted ${when}, by ${fittedBy}.`
  const who = fittedBy === 'us' ? 'We' : `${fittedBy.charAt(0).toUpperCase()}${fittedBy.slice(1)}`
  return `${who} fitted it; nobody knows when.`
}
