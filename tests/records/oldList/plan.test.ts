import fc from 'fast-check'
import { v7 as uuidv7 } from 'uuid'
import { expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import {
  type Answers,
  columnWords,
  fieldsOf,
  gatherAsked,
  guessColumns,
  noAnswers,
  type Plan,
  recordsOf,
  type Verdict,
  whatIsOnFile,
} from '@/lib/records/oldList'
import { ratingRefusals } from '@/lib/records/oldList/ruleTwo'
import { openRatings } from '@/lib/records/view/openRatings'
import { held, now, planOf, readingOf, someEquipment, tableOf } from './someList'

const head = 'maker,range,position,make (in. w.c.)'
const outcomes = ({ verdicts }: Plan) => verdicts.map(({ row, outcome }) => [row, outcome])
const first = ({ verdicts }: Plan): Verdict => verdicts[0]!
const reportOf = (verdict: Verdict) => {
  if (verdict.outcome !== 'taken over') throw new Error(JSON.stringify(verdict))
  return verdict.reports[0]!
}
/** The records of a plan as the log would hold them. */
const confirmed = (plan: Plan, author?: string): HeldRecord[] =>
  recordsOf(
    plan,
    { fileName: 'old ratings.csv', sha256: 'a'.repeat(64), encoding: 'utf-8', separator: 'comma' },
    uuidv7,
  ).map(({ id, kind, body }) => held(kind, body, { id, ...(author === undefined ? {} : { author }) }))

test('planImport takes a row over to the position that it names, as a lead without proof, and says the level', () => {
  const equipment = someEquipment()
  const file = foldTeamFile(equipment.all)
  const plan = planOf(`${head}\nORRINMOOR,om ridge,low-fire,-0.65`, { file })
  expect(reportOf(first(plan))).toMatchObject({
    level: 'Unverified',
    looks: [],
    body: {
      positionId: equipment.low.id,
      action: 'closes',
      sense: 'suction',
      kind: 'one-port',
      between: 'not stated',
      stage: 'not stated',
      source: 'imported',
      origin: 'list old ratings.csv',
    },
  })
  expect(plan.things).toEqual([])
})

test('planImport finds the range of a model by its patterns, and refuses a model of another range', () => {
  const equipment = someEquipment()
  const file = foldTeamFile([
    ...equipment.all,
    held('equipment range', {
      makerId: equipment.maker.id,
      name: 'OM Vale',
      modelPatterns: ['OMV-60'],
      fuel: 'either',
      heat: 'not stated',
    }),
  ])
  const at = (model: string, range = '') =>
    first(planOf(`maker,range,model,position,make (Pa)\nOrrinmoor,${range},${model},Low fire,160`, { file }))
  expect(reportOf(at('OMR-80A')).body.positionId).toBe(equipment.low.id)
  expect(reportOf(at('omr 1A2')).body.positionId).toBe(equipment.low.id)
  expect(at('OMR-80A', 'OM Vale')).toMatchObject({
    outcome: 'refused',
    sentence: expect.stringContaining('another range'),
  })
  expect(at('QQ-1')).toMatchObject({ outcome: 'not answered' })
})

test('planImport never guesses a position: a row without one is refused until the person names it', () => {
  const text = 'maker,range,make (Pa)\nOrrinmoor,OM Ridge,160'
  expect(first(planOf(text))).toMatchObject({
    outcome: 'refused',
    sentence: expect.stringContaining('never to its sister'),
  })
  expect(first(planOf(text, { reading: { position: 'Low fire' } })).outcome).toBe('taken over')
})

test.each([
  ['its kind of switch', 'Orrinmoor,OM Ridge,Low fire,0.65,KX-1,Adjustable switch,'],
  ['its part number, which is on file as generic', 'Orrinmoor,OM Ridge,Low fire,0.65,uni 22,,'],
  ['its note', 'Orrinmoor,OM Ridge,Low fire,0.65,KX-1,,Universal kit fitted 2018'],
  ['its note, field-set', 'Orrinmoor,OM Ridge,Low fire,0.65,KX-1,,field-set to this'],
  ['a short word', 'Orrinmoor,OM Ridge,Low fire,0.65,KX-1,Adj switch,'],
  ['a short word with its point', 'Orrinmoor,OM Ridge,Low fire,0.65,KX-1,adjust. switch,'],
  [
    'its note, behind another that is denied',
    'Orrinmoor,OM Ridge,Low fire,0.65,KX-1,,non-adjustable original replaced by universal switch',
  ],
  [
    'its note, behind the same word denied',
    'Orrinmoor,OM Ridge,Low fire,0.65,KX-1,,not adjustable when found; adjustable one fitted now',
  ],
])(
  'rule 2 on import: a row of a general-purpose switch by %s is refused, with what to do instead',
  (_, row) => {
    const verdict = first(planOf(`${head},part number,switch type,note\n${row}`))
    expect(verdict).toMatchObject({
      outcome: 'refused',
      rule: 'no general-purpose switch',
      sentence: expect.stringMatching(/Record it as found fitted.*ask the maker/),
    })
  },
)

test('rule 2 on import refuses no row that says that its switch is not adjustable', () => {
  const text = `${head},note\nOrrinmoor,OM Ridge,Low fire,0.65,"Sealed, not adjustable; non-adjustable"`
  expect(first(planOf(text)).outcome).toBe('taken over')
})

/** A row that is taken over, with one more column. */
const withColumn = (name: string, cell: string) =>
  planOf(`${head},${name}\nOrrinmoor,OM Ridge,Low fire,0.65,"${cell}"`)
const refusedAs = (rule: string) => ({
  outcome: 'refused',
  rule,
  sentence: expect.stringContaining('Record it as found fitted, when and by whom'),
})

test.each([
  ['Adjustable?', 'yes'],
  ['Adjustable?', 'maybe'],
  ['Adjustable?', 'none'],
  ['is_adjustable', 'TRUE'],
  ['isAdjustable', '1'],
  ['Generic', 'x'],
  ['OEM or generic', 'OEM'],
  ['Field\u2011set', '0.65'],
  ['Non-adjustable?', 'no'],
  ['Non-adjustable?', ''],
  ['not_adjustable', '–'],
  ['Adjustment range', '0.1 either way'],
  ['Has no field-set switch', 'no'],
  ['Not universal or adjustable', 'no'],
  ['Adjustable switch replaced', 'no'],
])('rule 2 on import: a row with “%s” above “%s” is refused', (name, cell) => {
  const verdict = first(withColumn(name, cell))
  expect(verdict).toMatchObject(refusedAs('no general-purpose switch'))
  expect(verdict).toMatchObject({ sentence: expect.stringContaining(`Under “${name}”`) })
})

test.each([
  ['Jumper?', 'yes', 'refused'],
  ['bypass_found', 'since 2017', 'refused'],
  ['No jumper', 'no', 'refused'],
  ['Has no jumper', 'no', 'refused'],
  ['Jumper removed', 'no', 'refused'],
  ['Not jumpered or bypassed', 'no', 'refused'],
  ['Without jumper', 'no', 'refused'],
  ['Jumper?', 'No', 'taken over'],
  ['No jumper', 'yes', 'taken over'],
])('rule 4 on import: a row with “%s” above “%s” is %s', (name, cell, outcome) => {
  const verdict = first(withColumn(name, cell))
  expect(verdict.outcome).toBe(outcome)
  if (outcome === 'refused') expect(verdict).toMatchObject(refusedAs('no bypass'))
})

test.each([
  ['Adjustable?', 'no'],
  ['Adjustable?', 'N'],
  ['is_adjustable', 'FALSE'],
  ['isAdjustable', '0'],
  ['Generic', ''],
  ['Generic', ' – '],
  ['Non-adjustable?', 'Yes'],
  ['not adjustable', 'x'],
  ['Remarks', 'not adjustable'],
  ['Remarks', 'non–adjustable'],
  ['Remarks', 'No adjustable part'],
  ['Remarks', 'never adjusted'],
  ['Remarks', 'not adjus\u00ADtable'],
  ['Remarks', 'adjacent to the inducer'],
  ['Remarks', 'uni-220'],
  ['Remarks', 'suni-22'],
  ['Remarks', 'uni 2 2b'],
  ['Adjustment range', ''],
  ['Universal part no', ''],
  ['Supplier', 'Generously helped'],
])('rule 2 on import refuses no row with “%s” above “%s”', (name, cell) => {
  expect(first(withColumn(name, cell)).outcome).toBe('taken over')
})

test.each([
  'OEM, do not use universal',
  'field_set in 2019',
  'UniversalKit',
  'uni\u00ADversal',
  'general\u00A0purpose',
  'adjustable\u00ADswitch',
  'adjus\u00ADtable',
  'ordered as part no universal 22',
  'Stock no universal 22',
  'Cat no universal',
  'OEM no generic 7',
  'Ref no adjustable 40',
  'Cat. No universal 22',
  'found no adjustable one',
  'field adjusted to .65',
  'adjustment screw turned in',
  'adjusted on site',
  'readjusted in 2019',
  'field-settable',
  'screw-set switch',
  'set by screw',
  'set on site',
  'adjustible',
  'ajustable',
  'after-market',
  'Gen purpose',
  'gen. purpose',
  'univ. switch',
  'adj’ble',
  'uni-22',
  'uni-22 (old)',
  'P/N uni-22',
  'fitted: uni-22',
  'P/N: UNI 22, second choice',
  'sw_uni-22',
  'ｕｎｉ－22',
  'un\u00ADi22',
])('rule 2 on import: a row is refused for “%s” in a column that is mapped to nothing', (cell) => {
  expect(first(withColumn('Anything else', cell))).toMatchObject(refusedAs('no general-purpose switch'))
})

test.each(
  Object.entries(columnWords).filter(([field]) => !['maker', 'organisation', 'saidBy'].includes(field)),
)('rule 2 on import: the number of a generic switch on file is found in the column “%s” too', (_, words) => {
  const row = ['Orrinmoor', '0.65', 'Ede, UNI 22, old'].join(';')
  const table = tableOf(`Maker;Other;${words}\n${row}`, 'semicolon')
  const { genericIn } = whatIsOnFile(foldTeamFile(someEquipment().all))
  expect(ratingRefusals(table.head, guessColumns(table), genericIn)(table.rows[0]!.cells)).toMatchObject({
    rule: 'no general-purpose switch',
    sentence: expect.stringContaining(`Part UNI 22 under “${words}” is on file as`),
  })
})

test('rule 2 on import: a number of digits alone is no part number among pressures, and is one in a note', () => {
  const equipment = someEquipment()
  const numbered = { partNumber: '160', class: 'general-purpose', fieldAdjustable: true, positionIds: [] }
  const file = foldTeamFile([...equipment.all, held('part', numbered)])
  const at = (note: string) =>
    first(planOf(`maker,range,position,make (Pa),note\nOrrinmoor,OM Ridge,Low fire,160,${note}`, { file }))
  expect(at('sealed').outcome).toBe('taken over')
  expect(at('was 160').outcome).toBe('refused')
})

test.each([
  ['maker', 'Universal Hearths', 'not answered'],
  ['maker', 'Universal', 'refused'],
  ['maker', 'generic pressure switch', 'refused'],
  ['who rung', 'Adjustable Supply', 'taken over'],
  ['who rung', 'jumpered by Ede', 'refused'],
  ['said by', 'Ede Jumper', 'taken over'],
  ['said by', 'Adjustable', 'refused'],
  ['range', 'Universal Hearth', 'refused'],
  ['Heard from', 'Universal Hearths', 'refused'],
])('rule 2 on import: in the column “%s” the name “%s” is %s', (name, cell, outcome) => {
  const row = {
    maker: 'Orrinmoor',
    range: 'OM Ridge',
    position: 'Low fire',
    'make (Pa)': '160',
    [name]: cell,
  }
  const text = `${Object.keys(row).join(',')}\n${Object.values(row).join(',')}`
  expect(first(planOf(text)).outcome).toBe(outcome)
})

test('rules 2 and 4 on import: whatever column carries the word, mapped or not, the row is refused', () => {
  const fields = Object.entries(columnWords).filter(
    ([field]) => !['maker', 'organisation', 'saidBy'].includes(field),
  )
  const anyName = fc.constantFrom(...fields.map(([, words]) => words), 'Remarks', 'Colour', 'Column 9')
  const generic = [
    'adjustable',
    'Adj.',
    'field set',
    'UNIVERSAL',
    'generic',
    'general-purpose',
    'aftermarket',
    'after-market',
    'adjusted',
    'adjustment screw',
    'field-settable',
    'univ.',
  ]
  const anyWord = fc.constantFrom(
    ...generic.map((word) => [word, 'no general-purpose switch'] as const),
    ...['jumper', 'by-passed', 'wired out', 'jumped', 'shunted'].map((word) => [word, 'no bypass'] as const),
  )
  const around = fc.constantFrom('', 'old ', 'OEM; ', '0.65 in. w.c. ', '(')
  const others = fc.array(fc.constantFrom<string>('0.65', '', 'sealed', 'Low fire'), { maxLength: 8 })
  fc.assert(
    fc.property(anyName, anyWord, around, others, fc.nat(8), (name, [word, rule], before, cells, place) => {
      const at = Math.min(place, cells.length)
      const row = cells.toSpliced(at, 0, `${before}${word}`)
      const heads = row.map((_, each) => (each === at ? name : `Other ${each}`))
      const table = tableOf([heads.join(';'), row.join(';')].join('\n'), 'semicolon')
      const refused = ratingRefusals(table.head, guessColumns(table), () => undefined)(table.rows[0]!.cells)
      expect(refused).toMatchObject({
        rule,
        sentence: expect.stringMatching(/Record it as found fitted.*Is something else meant/),
      })
    }),
  )
})

test.each([
  'Jumpered since 2017',
  'no jumper found; was bypassed in 2019',
  'found no jumper',
  'jumped',
  'jump wire on it',
  'shunted',
  'shorted out',
  'byp.',
])('rule 4 on import: a row that speaks of a jumper is refused: %s', (note) => {
  const text = `${head},note\nOrrinmoor,OM Ridge,Low fire,0.65,${note}`
  expect(first(planOf(text))).toMatchObject({ outcome: 'refused', rule: 'no bypass' })
})

test.each(['No jumper found', 'sealed, no jumper', 'never jumped', 'Not bypassed', 'without jumper'])(
  'rule 4 on import refuses no row that says that no jumper is in: %s',
  (note) => {
    expect(first(withColumn('note', note)).outcome).toBe('taken over')
  },
)

test('planImport names duplicates within the list and with the log, and takes the same number from another source', () => {
  const text = [
    `${head},source,document,page,date`,
    'Orrinmoor,OM Ridge,Low fire,0.65,,,,',
    'Orrinmoor,OM Ridge,Low fire,0.65,,,,',
    'Orrinmoor,OM Ridge,Low fire,.65 ,,,,',
    'Orrinmoor,OM Ridge,Low fire,0.65,manual,ZQ 12,7,2019-04-03',
    'Orrinmoor,OM Ridge,High fire,0.65,,,,',
  ].join('\n')
  const equipment = someEquipment()
  const plan = planOf(text, { file: foldTeamFile(equipment.all) })
  expect(outcomes(plan)).toEqual([
    [2, 'taken over'],
    [3, 'duplicate'],
    [4, 'duplicate'],
    [5, 'taken over'],
    [6, 'taken over'],
  ])
  expect(plan.verdicts[1]).toMatchObject({ of: { row: 2 }, sentence: 'Row 2 says the same.' })
  const records = confirmed(plan)
  const again = planOf(text, { file: foldTeamFile([...equipment.all, ...records]) })
  expect(again.verdicts.map(({ outcome }) => outcome)).toEqual(Array(5).fill('duplicate'))
  expect(again.verdicts[0]).toMatchObject({
    of: { record: records.find(({ kind }) => kind === 'report')!.id },
  })
})

test('planImport holds back an unusual number until the person says that it is what the list says', () => {
  const text = `${head}\nOrrinmoor,OM Ridge,Low fire,6.5`
  const held = first(planOf(text))
  expect(held).toMatchObject({
    outcome: 'look again',
    sentence: expect.stringContaining('unusual for an air switch'),
  })
  expect(first(planOf(text, { takeOdd: true })).outcome).toBe('taken over')
})

test('planImport says which rows look like a slip beside what is on file', () => {
  const equipment = someEquipment()
  const page = held('report', {
    positionId: equipment.low.id,
    asWritten: '0.65 in. w.c.',
    action: 'closes',
    limit: 'nominal',
    pascals: 0.65 * 249.08891,
    sense: 'suction',
    unit: 'inH2O',
    decimals: 2,
    kind: 'one-port',
    between: 'port and room',
    tap: 'collector box',
    stage: 'low fire',
    source: 'current literature',
    proof: { kind: 'document', name: 'ZQ 12', page: '7' },
    saidOn: '2025-11-01',
    revisionRange: {},
    serialRange: {},
    elevationBand: {},
  })
  const file = foldTeamFile([...equipment.all, page])
  const { verdicts } = planOf(`${head}\nOrrinmoor,OM Ridge,Low fire,0.90\nOrrinmoor,OM Ridge,Low fire,0.65`, {
    file,
  })
  expect(reportOf(verdicts[0]!).looks).toEqual(['A better report on file names another value.'])
  expect(reportOf(verdicts[1]!).looks).toEqual([])
})

test('what planImport foretells is what the log then stands at: every level, and every body letter for letter', () => {
  const equipment = someEquipment()
  const file = foldTeamFile(equipment.all)
  const text = [
    `${head},open (in. w.c.),source,document,page,who rung,reference,date,holds for`,
    'Orrinmoor,OM Ridge,Low fire,0.65,0.50,current literature,ZQ 12,7,,,2025-11-01,all',
    'Orrinmoor,OM Ridge,Low fire,0.65,0.50,factory support,,,Orrinmoor line,T-1,2025-11-02,all',
    'Orrinmoor,OM Ridge,Low fire,0.90,,,,,,,,',
    'Orrinmoor,OM Ridge,High fire,0.95,,manual,ZQ 12,8,,,2019-03-04,all',
    'Orrinmoor,OM Ridge,High fire,1.20,,distributor,,,Hallam Supply,T-9,2025-10-04,all',
    'Orrinmoor,OM Ridge,Drain,0.30,,,,,,,,',
  ].join('\n')
  const plan = planOf(text, { file, answers: { ...noAnswers, positions: { DRA1N: { kind: 'one-port' } } } })
  expect(plan.verdicts.map(({ outcome }) => outcome)).toEqual(Array(6).fill('taken over'))
  const after = foldTeamFile([...equipment.all, ...confirmed(plan)])
  const ratings = openRatings(after, now)
  let told = 0
  for (const verdict of plan.verdicts) {
    if (verdict.outcome !== 'taken over') continue
    for (const { id, body, level } of verdict.reports) {
      expect(after.reports.get(id)?.body).toEqual(body)
      expect(after.importedFrom.get(id)).toMatchObject({ row: verdict.row })
      const position = after.positions.get(body.positionId)!
      const { closes, opens } = ratings.at(position)
      const standing = body.action === 'closes' ? closes : opens
      if (standing.level !== 'Not on file' && standing.reportIds.includes(id)) {
        expect(level).toBe(standing.level)
        told += 1
      }
    }
  }
  expect(told).toBeGreaterThan(5)
  const levels = new Set(
    plan.verdicts.flatMap((verdict) =>
      ('reports' in verdict ? verdict.reports : []).map(({ level }) => level),
    ),
  )
  expect([...levels].sort()).toEqual(['In dispute', 'Unverified', 'Verified'])
})

const asked = (text: string, answers: Answers = noAnswers, file = foldTeamFile(someEquipment().all)) => {
  const table = tableOf(text)
  const { columns, position } = readingOf(table)
  const rows = table.rows.map((row) => fieldsOf(row, columns))
  return gatherAsked(rows, position, whatIsOnFile(file), answers)
}

test('gatherAsked asks of a misspelt maker once for all its rows, with the one that may be meant first', () => {
  const equipment = someEquipment()
  const file = foldTeamFile(equipment.all)
  const text = `${head}\nOrinmoor,OM Ridge,Low fire,0.65\nOrinmoor,OM Ridge,High fire,0.90\nWexhollow,W1,Low fire,0.4`
  const { maker, range, position } = asked(text, noAnswers, file)
  expect(maker.map(({ name, rows, near }) => [name, rows, near()])).toEqual([
    ['Orinmoor', 2, [equipment.maker.id]],
    ['Wexhollow', 1, []],
  ])
  expect([range, position]).toEqual([[], []])
  const use = { ...noAnswers, makers: { [maker[0]!.key]: { use: equipment.maker.id } } }
  expect(outcomes(planOf(text, { file, answers: use }))).toEqual([
    [2, 'taken over'],
    [3, 'taken over'],
    [4, 'not answered'],
  ])
})

test('planImport adds makers, ranges and positions only where the person said so, and only what a row taken over needs', () => {
  const equipment = someEquipment()
  const file = foldTeamFile(equipment.all)
  const text = [
    'maker,range,model,position,make (in. w.c.)',
    'Wexhollow,W Line,W-1,Low fire,0.40',
    'Wexhollow,W Line,W-2,High fire,0.80',
    'Wexhollow,X Line,X-1,Low fire,adjust',
    'Tarnbeck,T Line,T-1,Low fire,0.40',
  ].join('\n')
  const { maker } = asked(text, noAnswers, file)
  const [wexhollow, tarnbeck] = [maker[0]!.key, maker[1]!.key]
  let answers: Answers = { ...noAnswers, makers: { [wexhollow]: 'add', [tarnbeck]: 'leave out' } }
  const { range } = asked(text, answers, file)
  expect(range.map(({ name, rows, maker: of }) => [name, rows, of])).toEqual([
    ['W Line', 2, 'Wexhollow'],
    ['X Line', 1, 'Wexhollow'],
  ])
  answers = { ...answers, ranges: Object.fromEntries(range.map(({ key }) => [key, 'add' as const])) }
  const { position } = asked(text, answers, file)
  expect(position.map(({ name, rows }) => [name, rows])).toEqual([
    ['Low fire', 2],
    ['High fire', 1],
  ])
  answers = {
    ...answers,
    positions: Object.fromEntries(position.map(({ key }) => [key, { kind: 'one-port' as const }])),
  }
  const plan = planOf(text, { file, answers })
  expect(plan.verdicts.map(({ outcome }) => outcome)).toEqual([
    'taken over',
    'taken over',
    'refused',
    'left out',
  ])
  expect(plan.things.map(({ kind, body, row }) => [kind, body.name, row])).toEqual([
    ['maker', 'Wexhollow', 2],
    ['equipment range', 'W Line', 2],
    ['position', 'Low fire', 2],
    ['position', 'High fire', 3],
  ])
  expect(plan.things[1]!.body.modelPatterns).toEqual(['W-1', 'W-2'])
  expect(plan.things[2]!.body).toMatchObject({
    stage: 'low fire',
    kind: 'one-port',
    between: 'not stated',
    sense: 'not stated',
  })
  const after = foldTeamFile([...equipment.all, ...confirmed(plan)])
  expect(counting(after.makers).map(({ body }) => body.name)).toEqual(['Orrinmoor', 'Wexhollow'])
})

test('one withdrawal of the import takes back every row and what was added with it, and withdrawing that brings all back', () => {
  const equipment = someEquipment()
  const text = `${head}\nWexhollow,W Line,Low fire,0.40\nOrrinmoor,OM Ridge,Low fire,0.65`
  const keys = asked(text)
  let answers: Answers = { ...noAnswers, makers: { [keys.maker[0]!.key]: 'add' } }
  answers = { ...answers, ranges: { [asked(text, answers).range[0]!.key]: 'add' } }
  answers = { ...answers, positions: { [asked(text, answers).position[0]!.key]: { kind: 'two-port' } } }
  const before = foldTeamFile(equipment.all)
  const records = confirmed(planOf(text, { file: before, answers }))
  const all = [...equipment.all, ...records]
  expect(counting(foldTeamFile(all).reports)).toHaveLength(2)

  const importId = records.find(({ kind }) => kind === 'import')!.id
  const withdrawal = held(
    'withdrawal',
    { record: importId, reason: 'The wrong list.' },
    { author: 'person-2' },
  )
  const without = foldTeamFile([...all, withdrawal])
  expect(counting(without.reports)).toEqual([])
  expect(counting(without.makers)).toEqual(counting(before.makers))
  expect(counting(without.ranges)).toEqual(counting(before.ranges))
  expect(counting(without.positions)).toEqual(counting(before.positions))
  // Rule 6: all of it stays readable, and says with what it went.
  for (const report of without.reports.values())
    expect(report.withdrawn).toMatchObject({
      reason: 'The wrong list.',
      by: 'person-2',
      withImport: importId,
    })

  const back = foldTeamFile([
    ...all,
    withdrawal,
    held('withdrawal', { record: withdrawal.id, reason: 'The right one.' }),
  ])
  expect(counting(back.reports)).toHaveLength(2)
  expect(counting(back.makers)).toHaveLength(2)
})

test('which rows belong to an import, and their withdrawal, is the same before they are sent, in whatever order', () => {
  const equipment = someEquipment()
  const file = foldTeamFile(equipment.all)
  const sent = confirmed(planOf(`${head}\nOrrinmoor,OM Ridge,Low fire,0.65`, { file }))
  const unsent = sent.map(({ seq: _seq, receivedAt: _at, clockShiftMs: _shift, ...record }) => record)
  const importId = sent[0]!.id
  const withdrawal = held('withdrawal', { record: importId, reason: 'The wrong list.' })
  for (const records of [unsent, [...unsent].reverse()]) {
    const { importedFrom } = foldTeamFile([...equipment.all, ...records])
    expect([...importedFrom.values()]).toEqual([{ importId, row: 2 }])
    expect(counting(foldTeamFile([...equipment.all, ...records, withdrawal]).reports)).toEqual([])
  }
})

test('a withdrawn import leaves what others have built on since, with all that it belongs to', () => {
  const equipment = someEquipment()
  const text = `${head}\nWexhollow,W Line,Low fire,0.40`
  let answers: Answers = { ...noAnswers, makers: { [asked(text).maker[0]!.key]: 'add' } }
  answers = { ...answers, ranges: { [asked(text, answers).range[0]!.key]: 'add' } }
  answers = { ...answers, positions: { [asked(text, answers).position[0]!.key]: { kind: 'one-port' } } }
  const records = confirmed(planOf(text, { file: foldTeamFile(equipment.all), answers }))
  const id = (kind: string) => records.find((each) => each.kind === kind)!.id
  const withdrawal = held('withdrawal', { record: id('import'), reason: 'The wrong list.' })
  const part = held(
    'part',
    {
      partNumber: 'WX-1',
      class: 'not known',
      fieldAdjustable: false,
      makerId: id('maker'),
      positionIds: [],
    },
    { author: 'person-2' },
  )
  const file = foldTeamFile([...equipment.all, ...records, part, withdrawal])
  expect(file.makers.get(id('maker'))?.withdrawn).toBeUndefined()
  expect(file.ranges.get(id('equipment range'))?.withdrawn).toBeDefined()
  expect(file.positions.get(id('position'))?.withdrawn).toBeDefined()
  const deeper = held('part', {
    partNumber: 'WX-2',
    class: 'not known',
    fieldAdjustable: false,
    positionIds: [id('position')],
  })
  const kept = foldTeamFile([...equipment.all, ...records, deeper, withdrawal])
  for (const kind of ['maker', 'equipment range', 'position'])
    expect(kept.records.get(id(kind))?.entry.withdrawn).toBeUndefined()
  expect(kept.reports.get(id('report'))?.withdrawn).toBeDefined()
})

test('nobody takes somebody else’s record into an import to withdraw it with the import', () => {
  const equipment = someEquipment()
  const mine = held(
    'import',
    { fileName: 'a.csv', sha256: 'a'.repeat(64), encoding: 'utf-8', separator: 'comma', rows: 1, taken: 1 },
    { author: 'person-2' },
  )
  const claim = (author: string) =>
    held('imported lines', { importId: mine.id, lines: [{ row: 2, record: equipment.low.id }] }, { author })
  const withdrawal = held('withdrawal', { record: mine.id, reason: 'x' }, { author: 'person-2' })
  for (const author of ['person-1', 'person-2']) {
    const file = foldTeamFile([...equipment.all, mine, claim(author), withdrawal])
    expect(file.positions.get(equipment.low.id)?.withdrawn).toBeUndefined()
  }
})

test('planImport tells how far it is, in steps between which a screen can be drawn', () => {
  const rows = Array.from(
    { length: 500 },
    (_, at) => `Orrinmoor,OM Ridge,Low fire,0.${String(at % 90).padStart(2, '0')}1`,
  )
  expect(planOf(`${head}\n${rows.join('\n')}`).steps).toBeGreaterThan(9)
})

test.each([
  ['0.75', '0.97'],
  ['0,75', '0,97'],
])(
  'planImport holds back a row that opens at more than it closes at, %s and %s, and says that they may be swapped',
  (make, broken) => {
    const text = `maker;range;position;make (in. w.c.);break (in. w.c.)\nOrrinmoor;OM Ridge;Low fire;${make};${broken}`
    expect(first(planOf(text))).toMatchObject({
      outcome: 'look again',
      sentence: expect.stringMatching(
        /It would open at 0\.97 in\. w\.c\. and close at 0\.75 .*may have been swapped/,
      ),
    })
    const taken = first(planOf(text, { takeOdd: true }))
    expect(taken).toMatchObject({ outcome: 'taken over' })
    expect(reportOf(taken).looks.join(' ')).toContain('may have been swapped')
  },
)

test('planImport holds back no row in the usual order, and none of a switch that opens on rise', () => {
  const rows = (make: string, broken: string, position = 'Low fire') =>
    `maker,range,position,make (Pa),break (Pa)\nOrrinmoor,OM Ridge,${position},${make},${broken}`
  expect(first(planOf(rows('240', '180'))).outcome).toBe('taken over')
  const equipment = someEquipment()
  const drain = held('position', {
    ...(equipment.low.body as object),
    name: 'Backward',
    kind: 'opens on rise',
  })
  const file = foldTeamFile([...equipment.all, drain])
  expect(first(planOf(rows('180', '240', 'Backward'), { file })).outcome).toBe('taken over')
})

test.each(['=1+1', '@SUM(1)', '+1+1', '-1*2', '+A1', '-(2)', '=0.65'])(
  'planImport refuses a row with the formula %s for a number, whatever the unit',
  (cell) => {
    const text = `maker,range,position,make,unit\nOrrinmoor,OM Ridge,Low fire,${cell},wc`
    const columns = { maker: 0, range: 1, position: 2, make: 3, unit: 4 }
    expect(first(planOf(text, { reading: { columns } }))).toMatchObject({
      outcome: 'refused',
      rule: 'formula',
      sentence: expect.stringContaining('is a formula of a spreadsheet'),
    })
  },
)

test('planImport refuses a formula in a column of words too, and takes a note that begins with a dash', () => {
  const at = (note: string) =>
    first(planOf(`${head},note\nOrrinmoor,OM Ridge,Low fire,-0.65,${note}`)).outcome
  expect(['=A1', '@now', '+SUM(A1)'].map(at)).toEqual(['refused', 'refused', 'refused'])
  expect(['- seen by Ede', '-', '+1 555 0142', '-40 F outside'].map(at)).toEqual(Array(4).fill('taken over'))
})

test.each([
  ['-0.65', 'suction'],
  ['+0.65', 'pressure'],
  ['-.65', 'suction'],
  ['-0.65 in. w.c.', 'suction'],
  ['-0.65 ±0.05', 'suction'],
] as const)('planImport takes the signed number %s as a number', (cell, sense) => {
  const { body } = reportOf(first(planOf(`${head}\nOrrinmoor,OM Ridge,Low fire,${cell}`)))
  expect(body).toMatchObject({ sense, pascals: expect.closeTo(0.65 * 249.08891, 6) })
})

test.each(['0.05', '±0.05', '+/-0.05', '+/- .05', '0,05'])(
  'planImport takes the tolerance %s of its own column either way, in the row’s unit',
  (tolerance) => {
    const text = `maker;range;position;make;unit;tolerance\nOrrinmoor;OM Ridge;Low fire;-0,65;wc;${tolerance}`
    const { body } = reportOf(
      first(planOf(text, { reading: { decimals: tolerance.includes(',') ? 'comma' : 'not known' } })),
    )
    expect(body.toleranceAbove).toBeCloseTo(0.05 * 249.08891, 6)
    expect(body.toleranceBelow).toBeCloseTo(0.05 * 249.08891, 6)
    expect(body.asWritten).toMatch(/^-0,65 wc ± [.0,]+5$/)
  },
)

test('planImport leaves the tolerance beside a number as it stands, and refuses one that can’t be read', () => {
  const at = (make: string, tolerance: string) =>
    first(planOf(`${head},tol (Pa)\nOrrinmoor,OM Ridge,Low fire,${make},${tolerance}`))
  expect(reportOf(at('0.65 ±0.02', '12')).body.toleranceAbove).toBeCloseTo(0.02 * 249.08891, 6)
  expect(reportOf(at('0.65', '12')).body.toleranceAbove).toBeCloseTo(12, 9)
  expect(reportOf(at('0.65', '')).body.toleranceAbove).toBeUndefined()
  for (const unclear of ['-12', 'narrow', '5 %'])
    expect(at('0.65', unclear)).toMatchObject({ outcome: 'refused', rule: 'tolerance' })
})
