import { v7 as uuidv7 } from 'uuid'
import { beforeEach, describe, expect, test } from 'vitest'
import { recordKinds } from '@/lib/records/registry'
import { type Log, openLog } from '@/lib/server/log/openLog'
import { openTables } from '@/lib/server/log/tables'
import { noon, record, technician, withFreshLog } from './freshLog'

/** What the log itself asks before it takes in what is said of a visit. */
const fresh = withFreshLog()
let log: Log
beforeEach(async () => {
  log = openLog({ db: fresh.db, kinds: recordKinds, now: () => noon })
  expect(await add(furnace, theCase, visit)).toEqual(['stored', 'stored', 'stored'])
})

const minutes = (count: number): string => new Date(noon.getTime() + count * 60_000).toISOString()
const said = (kind: string, body: Record<string, unknown>, at = -60) =>
  record({ kind, version: recordKinds[kind]!.version, body, saidAt: minutes(at) })

/** Sends records, and answers with what became of each: its outcome, or the rule that refused it. */
async function add(...records: unknown[]): Promise<string[]> {
  return addSentAt(noon.toISOString(), ...records)
}
async function addSentAt(sentAt: string, ...records: unknown[]): Promise<string[]> {
  const answers = await log.appendRecords({ sentAt, records }, technician)
  return answers.map((answer) => (answer.outcome === 'refused' ? answer.rule : answer.outcome))
}

const furnace = said('furnace', { siteLabel: 'Weir House', model: 'LF2-080-B', fuel: 'natural gas' })
const theCase = said('case', { furnaceId: furnace.id, complaint: 'No heat', circuit: 'proving circuit' })
const visit = said('visit', { caseId: theCase.id, on: '2026-01-12' })
const of = { caseId: theCase.id, visitId: visit.id }
const finding = (at: number) => said('finding', { ...of, finding: 'spillage', value: 'ruled out' }, at)
const ending = (at: number) => said('ending', { ...of, how: 'repair declined' }, at)
const withdrawal = (id: string, at = -1) => said('withdrawal', { record: id, reason: 'Too early.' }, at)
const barred = 'the visit has ended'

describe('a visit that has ended', () => {
  test('takes nothing that was said after its ending, and says what to do instead', async () => {
    await add(ending(-30))
    const [answer] = await log.appendRecords(
      { sentAt: noon.toISOString(), records: [finding(-20)] },
      technician,
    )
    expect(answer).toMatchObject({
      outcome: 'refused',
      rule: barred,
      sentence: 'This visit had ended when it was said. Begin a new visit on the case and record it there.',
    })
  })

  test('takes what was said before its ending or with it, however late that arrives', async () => {
    expect(await add(ending(-30), finding(-35), finding(-30))).toEqual(['stored', 'stored', 'stored'])
  })

  test('takes nothing that was observed or measured', async () => {
    const reading = said(
      'reading',
      {
        furnaceId: furnace.id,
        ...of,
        samples: [120],
        sense: 'suction',
        kind: 'one-port',
        between: 'port and room',
        tap: 'collector box',
        stage: 'single stage',
        door: 'on',
        phase: 'pre-purge',
        contacts: 'open',
        situation: 'as found',
        when: 'as found',
        byTeeAtTheSwitch: true,
        zeroed: true,
        asTyped: '120 Pa',
      },
      -20,
    )
    const combustion = said(
      'combustion test',
      { furnaceId: furnace.id, ...of, when: 'as found', flueCoPpm: [20] },
      -20,
    )
    const check = said(
      'switch check',
      {
        furnaceId: furnace.id,
        ...of,
        positionId: furnace.id,
        what: 'at rest',
        inducerStopped: true,
        hoseOff: true,
        wiresOff: true,
        contact: 'open',
      },
      -20,
    )
    const late = [finding(-20), reading, combustion, check]
    expect(await add(ending(-30), ...late)).toEqual(['stored', ...late.map(() => barred)])
  })

  test('still takes a danger, and a repair that is written down in the van', async () => {
    const repair = said(
      'repair',
      { furnaceId: furnace.id, ...of, done: 'Cleared the trap', switchReplaced: false, on: '2026-01-12' },
      -20,
    )
    const danger = said('finding', { ...of, finding: 'spillage', value: 'seen' }, -20)
    expect(await add(ending(-30), repair, danger)).toEqual(['stored', 'stored', 'stored'])
  })

  test('still takes another ending, a withdrawal, and a notice that the furnace is left off', async () => {
    const one = finding(-40)
    const notice = said(
      'shut-down notice',
      {
        furnaceId: furnace.id,
        caseId: theCase.id,
        on: '2026-01-12',
        found: 'Spillage',
        doNotRelightUntil: 'The vent is rebuilt',
        gas: 'off',
        power: 'off',
        tagged: true,
        writtenNotice: true,
      },
      -10,
    )
    expect(await add(one, ending(-30), ending(-29), withdrawal(one.id), notice)).toEqual(
      Array(5).fill('stored'),
    )
  })

  test('is open again once its ending is withdrawn, and ended again once that is taken back', async () => {
    const end = ending(-30)
    const open = withdrawal(end.id, -25)
    expect(await add(end, open, finding(-20))).toEqual(['stored', 'stored', 'stored'])
    const shut = withdrawal(open.id, -15)
    expect(await add(shut, finding(-10))).toEqual(['stored', barred])
    expect(await add(withdrawal(shut.id, -9), finding(-8))).toEqual(['stored', 'stored'])
  })

  test('with two endings has ended with the first of them; withdrawing it leaves the second', async () => {
    const [first, second] = [ending(-30), ending(-20)]
    expect(await add(second, first, finding(-25))).toEqual(['stored', 'stored', barred])
    expect(await add(withdrawal(first.id), finding(-25), finding(-15))).toEqual(['stored', 'stored', barred])
  })

  test('bars nothing on another visit of the case', async () => {
    const next = said('visit', { caseId: theCase.id, on: '2026-01-12' }, -20)
    const onNext = said('finding', { ...of, visitId: next.id, finding: 'spillage', value: 'ruled out' }, -10)
    expect(await add(ending(-30), next, onNext)).toEqual(['stored', 'stored', 'stored'])
  })
})

describe('the moments are those of the server’s clock, whatever the devices show', () => {
  /** Sent at noon by the server's clock from a phone whose own clock is so many minutes off. */
  const addFrom = (offMinutes: number, ...records: unknown[]) => addSentAt(minutes(offMinutes), ...records)
  const shifted = (one: ReturnType<typeof record>, offMinutes: number) => ({
    ...one,
    saidAt: new Date(Date.parse(one.saidAt) + offMinutes * 60_000).toISOString(),
  })

  test('an ending from a slow phone bars nothing that was said before it', async () => {
    expect(await addFrom(-120, shifted(ending(-30), -120))).toEqual(['stored'])
    expect(await add(finding(-40), finding(-20))).toEqual(['stored', barred])
  })

  test('what a fast phone said before the ending is taken in', async () => {
    await add(ending(-30))
    expect(await addFrom(120, shifted(finding(-40), 120), shifted(finding(-20), 120))).toEqual([
      'stored',
      barred,
    ])
  })

  test('moments with an offset are compared as moments', async () => {
    const end = { ...ending(-30), saidAt: '2026-01-12T06:30:00-05:00' }
    expect(await add(end, finding(-35), finding(-25))).toEqual(['stored', 'stored', barred])
  })
})

describe('a case on a furnace that was found to be another’s duplicate', () => {
  test('takes records that name the furnace that was kept, until the two are parted again', async () => {
    const kept = said('furnace', { siteLabel: 'Weir House, cellar', model: 'LF2-080-B', fuel: 'natural gas' })
    const join = said('same as', { kept: kept.id, duplicate: furnace.id, reason: 'Entered twice.' })
    const test = () =>
      said('combustion test', { furnaceId: kept.id, ...of, when: 'as found', flueCoPpm: [20] })
    expect(await add(kept, test())).toEqual(['stored', 'it belongs to its case'])
    expect(await add(join, test())).toEqual(['stored', 'stored'])
    expect(await add(withdrawal(join.id), test())).toEqual(['stored', 'it belongs to its case'])
  })
})

test('the endings of a visit are found by their index, and not by reading the whole log', () => {
  const plans: string[] = []
  const watched = new Proxy(fresh.db, {
    get(db, name) {
      if (name !== 'prepare') return Reflect.get(db, name).bind?.(db) ?? Reflect.get(db, name)
      return (sql: string) => {
        if (/'ending'/.test(sql))
          plans.push(
            ...db
              .prepare<[string], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`)
              .all(uuidv7())
              .map(({ detail }) => detail),
          )
        return db.prepare(sql)
      }
    },
  })
  openTables(watched)
  expect(plans[0]).toContain('USING INDEX LogContent_ends_visit')
  expect(plans.join('\n')).not.toMatch(/\bSCAN\b/)
})
