import { v7 as uuidv7 } from 'uuid'
import { documentUnits } from '@/lib/server/exchange/logDocument'
import { canonicalBytes } from '@/lib/server/log/canonical'
import { contentHashOf, entryHashOf, noPreviousHash } from '@/lib/server/log/hash'

/** A document whose hashes all fit, made by somebody who wants a generic switch's number on file. */
export function forgeWithGenericSwitch(author: string): string {
  const [maker, range, position, part] = [uuidv7(), uuidv7(), uuidv7(), uuidv7()]
  const place = { kind: 'one-port', between: 'port and room', tap: 'collector box', sense: 'suction' }
  const said: [string, string, Record<string, unknown>][] = [
    [maker, 'maker', { name: 'Orrinmoor' }],
    [
      range,
      'equipment range',
      { makerId: maker, name: 'ZQ', modelPatterns: ['ZQ*'], fuel: 'either', heat: 'not stated' },
    ],
    [position, 'position', { rangeId: range, name: 'Low fire', stage: 'low fire', ...place }],
    [part, 'part', { partNumber: 'UNI-1', class: 'general-purpose', fieldAdjustable: true, positionIds: [] }],
    [
      uuidv7(),
      'report',
      {
        positionId: position,
        asWritten: '0.65 in. w.c.',
        action: 'closes',
        limit: 'nominal',
        pascals: 161.9,
        unit: 'inH2O',
        decimals: 2,
        stage: 'low fire',
        ...place,
        source: 'unknown switch label',
        readOffPart: part,
      },
    ],
  ]
  const at = '2026-01-12T12:00:00.000Z'
  let previousHash = noPreviousHash
  const entries = said.map(([id, kind, body], index) => {
    const record = { id, kind, version: 1, body, saidAt: at, author, device: 'desk-1' }
    const bytes = canonicalBytes(record)
    if (!bytes.ok) throw new Error(bytes.problem.message)
    const salt = String(index).padStart(32, '0')
    const contentHash = contentHashOf(salt, bytes.value)
    const header = { seq: index + 1, receivedAt: at, clockShiftMs: 0 }
    const hash = entryHashOf(previousHash, contentHash, {
      ...header,
      id,
      kind,
      version: 1,
      author,
      device: 'desk-1',
      saidAt: at,
    })
    const entry = { ...header, contentHash, previousHash, hash, salt, withheldBySeq: null, record }
    previousHash = hash
    return entry
  })
  return JSON.stringify({
    $schema: 'inchwater-log.schema.json',
    format: 'Inchwater log',
    version: 1,
    exportedAt: at,
    head: { seq: entries.length, hash: previousHash },
    units: documentUnits(),
    people: [],
    entries,
    ratings: [],
  })
}
