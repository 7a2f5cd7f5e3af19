import {
  type CaseTable,
  causePlaces,
  emptyCaseTable,
  writeCause,
  writeContext,
  writeFinding,
} from './caseTable'
import type { Catalogue, Context, NamedCause, Observations } from './catalogue'
import { readObservations } from './readObservations'

/** Milliseconds since 1970, UTC: when somebody said it, and when it reached the log. */
type Times = { saidAt: number; receivedAt: number }

/** A case with the history of what was said about it, so that it can be seen as it stood on any day. */
export type ReplayCase = {
  id: string
  openedAt: number
  context?: Context
  findings: readonly ({ finding: string; value: string } & Times)[]
  /** What was said to have caused it, each statement replacing those said before it. */
  causes: readonly ({ says: NamedCause | 'withdrawn' } & Times)[]
}

/** The cause by the statements received before a moment, of which the one said last counts. */
export function causeAsOf(one: ReplayCase, before: number): NamedCause | undefined {
  return saidLast(one.causes.filter((statement) => statement.receivedAt < before))
}

function saidLast(statements: ReplayCase['causes']): NamedCause | undefined {
  const last = statements.toSorted((a, b) => a.saidAt - b.saidAt || a.receivedAt - b.receivedAt).at(-1)
  return last === undefined || last.says === 'withdrawn' ? undefined : last.says
}

/** What was found before anybody named a cause: all that a forecast may look at, the value said last of each finding. */
export function foundBeforeCause(one: ReplayCase): Observations {
  const firstNamed = Math.min(...one.causes.map((statement) => statement.saidAt))
  const said = one.findings.filter((finding) => finding.saidAt < firstNamed)
  return Object.fromEntries(
    said.toSorted((a, b) => a.saidAt - b.saidAt).map(({ finding, value }) => [finding, value]),
  )
}

/**
 * A table of all the cases that shows them as of any moment, moving forward only. `advanceTo(moment)` enters what was
 * received before that moment and nothing else; a case not yet opened then has neither findings nor cause.
 */
export function replayTimeline(catalogue: Catalogue, cases: readonly ReplayCase[]) {
  const table: CaseTable = emptyCaseTable(
    catalogue,
    cases.map((one) => one.id),
  )
  const places = causePlaces(catalogue)
  const entries: { receivedAt: number; saidAt: number; enter: () => void }[] = []
  cases.forEach((one, at) => {
    const { context = {}, openedAt } = one
    entries.push({ receivedAt: openedAt, saidAt: openedAt, enter: () => writeContext(table, at, context) })
    const lastSaid = new Map<string, number>()
    for (const { finding, value, saidAt, receivedAt } of one.findings) {
      const [observed] = readObservations(table, { [finding]: value })
      const place = table.findingPlaces.get(finding)!
      const carries = catalogue.findings[place]!.carries !== 'context only'
      const enter = () => {
        // Said earlier but received later: what was said since stands.
        if (saidAt < (lastSaid.get(finding) ?? -Infinity)) return
        lastSaid.set(finding, saidAt)
        if (carries) writeFinding(table, at, place, observed?.value)
      }
      entries.push({ receivedAt, saidAt, enter })
    }
    for (const { receivedAt, saidAt } of one.causes) {
      const known = saidLast(one.causes.filter((statement) => statement.receivedAt <= receivedAt))
      entries.push({ receivedAt, saidAt, enter: () => writeCause(table, at, known, places) })
    }
  })
  if (entries.some((entry) => !Number.isFinite(entry.receivedAt) || !Number.isFinite(entry.saidAt))) {
    throw new RangeError('Every time in a replay must be a number of milliseconds')
  }
  entries.sort((a, b) => a.receivedAt - b.receivedAt || a.saidAt - b.saidAt)
  let entered = 0
  return {
    table,
    advanceTo(moment: number): void {
      while (entered < entries.length && entries[entered]!.receivedAt < moment) entries[entered++]!.enter()
    },
  }
}
