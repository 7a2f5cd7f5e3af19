import type { HeldRecord } from '@/lib/records/fold/entry'
import { provenEnding, provenRows, type Row, recordsOf, of as theCase } from '../cases/end/provenCase'
import { ids } from '../setup/smallFile'

type Told = { on: string; mainCause: 'trap-plugged' | 'ice-in-vent' }

/** The id of the n-th case of `manyCases`, counted from 1. */
export const caseId = (nth: number): string =>
  theCase.case.replace(/8000-/, `8${String(nth).padStart(3, '0')}-`)

/** Proven cases on the furnace of the small file, one for each day given, and the label that their limits rest on. */
export function manyCases(told: readonly Told[]): HeldRecord[] {
  const ending: Row = [theCase.ending, 'ending', provenEnding, '2026-01-12T17:00:00.000Z']
  const label = provenRows
    .filter(([id]) => id === ids.label)
    .map(([id, kind, body]): Row => [id, kind, body, '2020-01-05T09:00:00.000Z'])
  const ofCase = [...provenRows.filter(([id]) => id !== ids.label), ending]
  const rows = told.flatMap(({ on, mainCause }, index) =>
    ofCase.map((row): Row => {
      const text = JSON.stringify(row)
        .replace(/8000-(000000000c)/g, `8${String(index + 1).padStart(3, '0')}-$1`)
        .replaceAll('2026-01-12', on)
        .replace('"mainCause":"trap-plugged"', `"mainCause":"${mainCause}"`)
      return JSON.parse(mainCause === 'trap-plugged' ? text : asVentEnd(text)) as Row
    }),
  )
  return recordsOf([...label, ...rows])
}

const asVentEnd = (text: string): string =>
  text
    .replace('"finding":"trap","value":"sludge in it"', '"finding":"vent-end","value":"ringed with ice"')
    .replace('"finding":"water-in-collector-box"', '"finding":"frost-in-a-cold-run"')

/** So many days of one winter, from December on, on which the two causes take turns. */
export const winter = (began: number, howMany: number): Told[] =>
  Array.from({ length: howMany }, (_, index) => ({
    on: `${began}-12-${String(index + 1).padStart(2, '0')}`,
    mainCause: index % 2 === 0 ? 'trap-plugged' : 'ice-in-vent',
  }))
