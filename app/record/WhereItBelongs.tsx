'use client'

import { useDeviceState } from '../device/deviceContext'

type Props = { kind: string; id: string; body: Readonly<Record<string, unknown>> }

/** Where a record is seen at work: its own page, or that of the thing it is about. Nothing where it has none. */
export function WhereItBelongs({ kind, id, body }: Props) {
  const { file } = useDeviceState()
  const places = placesOf(kind, id, body).filter(({ record }) => file.records.has(record))
  if (places.length === 0) return null
  return (
    <p>
      {places.map(({ href, words }, place) => (
        <span key={href}>
          {place > 0 && ' · '}
          <a href={href}>{words}</a>
        </span>
      ))}
    </p>
  )
}

type Place = { record: string; href: string; words: string }

function placesOf(kind: string, id: string, body: Props['body']): Place[] {
  const at = (record: unknown, page: string, words: string): Place[] =>
    typeof record === 'string' ? [{ record, href: `${page}${record}`, words }] : []
  const isDesk = ['rating request', 'asks too', 'promise', 'call attempt', 'organisation', 'answer seen']
  return [
    ...at(kind === 'case' ? id : body.caseId, '/case?id=', 'See the case'),
    ...at(kind === 'furnace' ? id : body.furnaceId, '/furnace?id=', 'See the furnace'),
    ...at(kind === 'position' ? id : body.positionId, '/setpoint?position=', 'See the setpoint'),
    ...at(kind === 'equipment range' ? id : body.rangeId, '/equipment/range?id=', 'See the range'),
    ...at(kind === 'shut-down notice' ? id : body.noticeId, '/notice?id=', 'See the notice'),
    ...(isDesk.includes(kind) ? [{ record: id, href: '/phone-desk', words: 'See the Phone desk' }] : []),
  ]
}
