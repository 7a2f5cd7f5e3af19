import { sources } from '@/lib/catalogue/sources'
import { senseWords } from '@/lib/catalogue/switchKinds'
import { formatPressure } from '@/lib/core/pressure'
import type { PlannedReport, Verdict } from '@/lib/records/oldList'
import { toleranceWords } from '../ui/words/pressureWords'
import { sayDate } from '../ui/words/sayDate'

/** “1 row”, “12 rows”. */
export const rowsWords = (rows: number): string => (rows === 1 ? '1 row' : `${rows} rows`)

/** “1 maker, 3 ranges, 6 positions”; empty where there is none. */
export function thingsWords(things: readonly { kind: string }[]): string {
  const names = { maker: 'maker', 'equipment range': 'range', position: 'position' }
  return Object.entries(names)
    .map(([kind, name]) => [things.filter((thing) => thing.kind === kind).length, name] as const)
    .filter(([count]) => count > 0)
    .map(([count, name]) => `${count} ${name}${count === 1 ? '' : 's'}`)
    .join(', ')
}

/** The outcomes of a row, in the order in which they matter. */
export const outcomes = [
  'taken over',
  'look again',
  'refused',
  'duplicate',
  'not answered',
  'left out',
] as const satisfies readonly Verdict['outcome'][]

export const outcomeWords: Readonly<Record<Verdict['outcome'], string>> = {
  'taken over': 'To be taken over',
  'look again': 'Look again',
  refused: 'Refused',
  duplicate: 'There already',
  'not answered': 'Name not on file',
  'left out': 'Left out',
}

const actionText = {
  closes: 'closes at',
  opens: 'opens at',
  'not stated': 'closes or opens, not stated, at',
} as const

/** What was understood of a number: “closes at 0.65 in. w.c. ± 0.05, suction”. */
export function readAs({ body }: PlannedReport): string {
  const { action, pascals, unit, decimals, sense } = body
  const tolerance = toleranceWords(body, unit, decimals)
  return `${actionText[action]} ${formatPressure(pascals, unit, decimals)}${tolerance === '' ? '' : ` ${tolerance}`}, ${senseWords[sense]}`
}

/** The level that it would have, its source and its day: a number is never shown without them. */
export const wouldStand = ({ level, body }: PlannedReport): string =>
  `${level}: ${sources[body.source].words}, ${body.saidOn === undefined ? 'day not stated' : sayDate(body.saidOn)}`
