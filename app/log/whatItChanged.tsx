import type { ReactNode } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { SameAsBody } from '@/lib/records/kinds/sameAs'
import type { SettlementBody } from '@/lib/records/kinds/settlement'
import type { SupersessionBody } from '@/lib/records/kinds/supersession'
import type { WithdrawalBody } from '@/lib/records/kinds/withdrawal'
import type { WithholdingBody } from '@/lib/records/kinds/withholding'
import { recordKinds } from '@/lib/records/registry'
import { type LevelChange, standingChange } from '@/lib/records/view/log/standingChange'
import { fieldOf } from '../record/recordWords'
import { type About, record } from '../record/shown'
import { actionWords } from '../ui/words/actionWords'

type Body = Readonly<Record<string, unknown>>
type Changing = (body: Body, about: About) => ReactNode

/** How many of the records that one belongs to are named in its line. */
const named = 2

/** Kinds that change what another record is worth; each says so in its own words. */
const changing: Readonly<Record<string, Changing>> = {
  withdrawal: (body, about) => {
    const { record: id, reason, replacedBy } = body as WithdrawalBody
    return (
      <>
        Withdrew {record(id, about)}
        {replacedBy !== undefined && <>, and put {record(replacedBy, about)} in its place</>}: {reason}
      </>
    )
  },
  withholding: (body, about) => {
    const { record: id, fields, reason } = body as WithholdingBody
    const kind = about.kindOf(id) ?? ''
    const words = fields.map((field) => fieldOf(kind, field).name).join(', ')
    return (
      <>
        Withheld “{words}” of {record(id, about)}: {reason}
      </>
    )
  },
  'same as': (body, about) => {
    const { kept, duplicate } = body as SameAsBody
    return (
      <>
        Joined {record(duplicate, about)} to {record(kept, about)}
      </>
    )
  },
  settlement: (body, about) => {
    const { evidenceReportId, overruledReportIds } = body as SettlementBody
    return (
      <>
        Settled a dispute by {record(evidenceReportId, about)}, against{' '}
        {overruledReportIds.length === 1 ? 'one report' : `${overruledReportIds.length} reports`}
      </>
    )
  },
  supersession: (body, about) => {
    const { oldPartId, newPartId } = body as SupersessionBody
    return (
      <>
        {record(newPartId, about)} takes the place of {record(oldPartId, about)}
      </>
    )
  },
}

/** What a record did, in a line: what it changed of others, or what it was added to. */
export function whatItChanged(kind: string, body: Body, about: About): ReactNode {
  const said = changing[kind]?.(body, about)
  if (said !== undefined) return said
  const to = [...new Set(recordKinds[kind]?.refersTo(body) ?? [])]
  if (to.length === 0) return 'Added'
  return (
    <>
      Added to{' '}
      {to.slice(0, named).map((id, place) => (
        <span key={id}>
          {place > 0 && ' and '}
          {record(id, about)}
        </span>
      ))}
      {to.length > named && `, and ${to.length - named} more`}
    </>
  )
}

/** What a record did to the rating of its switch; nothing where no rating rests on it. */
export function levelWords(file: TeamFile, id: string): string | undefined {
  const change = standingChange(file, id)
  if (change === undefined) return tookBackImport(file, id) ? ofImport : undefined
  if (change.changes.length === 0 && change.elsewhere.length > 0)
    return change.elsewhere
      .map(({ holdsFor, changes }) => `For ${holdsFor.join('; ')}: ${changes.map(oneChange).join('; ')}.`)
      .join(' ')
  if (change.changes.length === 0) return 'It left every level as it was.'
  const where = change.furnaceId === undefined ? '' : ' (for the furnace it was made on)'
  return `${change.changes.map(oneChange).join('; ')}${where}.`
}

const ofImport =
  'It took back every report of that list. What that changed is not listed here: each setpoint has them under “Withdrawn, still readable”.'

const tookBackImport = (file: TeamFile, id: string): boolean => {
  const record = file.records.get(id)
  return (
    record?.kind === 'withdrawal' && file.records.get(String(record.entry.body.record))?.kind === 'import'
  )
}

function oneChange({ action, from, to, otherValue }: LevelChange): string {
  const { name } = actionWords[action]
  if (from !== to) return `${name}: ${from} → ${to}`
  return otherValue ? `${name}: still ${to}, with another value` : `${name}: still ${to}`
}
