/** What each kind of record is called on the screens. */
const names: Readonly<Record<string, string>> = {
  maker: 'Maker',
  'equipment range': 'Furnace range',
  position: 'Switch position',
  part: 'Part',
  supersession: 'Part superseded',
  furnace: 'Furnace',
  gauge: 'Gauge',
  report: 'Report',
  settlement: 'Dispute settled',
  withdrawal: 'Withdrawal',
  withholding: 'Personal data withheld',
  'same as': 'Duplicates joined',
  'rating request': 'Rating request',
  'found fitted': 'Found fitted',
  repair: 'Repair',
  preference: 'Own settings',
  case: 'Case',
  visit: 'Visit',
  finding: 'Finding',
  reading: 'Reading',
  baseline: 'Baseline',
  'combustion test': 'Combustion test',
  ending: 'Ending of a visit',
  'shut-down notice': 'Shut-down notice',
  lifting: 'Shut-down notice lifted',
  'danger answer': 'What was done about a danger',
  'fitted part': 'Part number read off the switch',
  'switch check': 'Check of a switch',
  'asks too': 'Asked too',
  promise: 'Promise to ring',
  organisation: 'Whom the team rings',
  'call attempt': 'Call',
  'answer seen': 'Answer reached',
  tag: 'Furnace tag',
  photo: 'Photo',
  import: 'Import of an old list',
  'warranty answer': 'Warranty answer',
  'imported lines': 'Rows of an import',
}

/** A kind's name; one without an entry is called what the log calls it. */
export const kindName = (kind: string): string => names[kind] ?? splitWords(kind)

/**
 * A key as words: `toleranceAbove` as `Tolerance above`. The unit that a key ends with is said with the value, and
 * that it is an id is nobody's business.
 */
export function splitWords(key: string): string {
  const words = key
    .replace(/(Pascals|Metres|Ids?)$/, '')
    .replace(/([a-z0-9])([A-Z])/g, (_, before: string, letter: string) => `${before} ${letter.toLowerCase()}`)
  const said = words === '' ? key : words
  return said.charAt(0).toUpperCase() + said.slice(1)
}
