import type { CombustionTestBody } from '@/lib/records/kinds/combustionTest'
import type { EndingBody } from '@/lib/records/kinds/ending'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import type { RepairBody } from '@/lib/records/kinds/repair'
import type { SwitchCheckBody } from '@/lib/records/kinds/switchCheck'
import type { Team } from '../team'
import { gaugeOf, type Read, takeReading } from './gaugeReading'
import { habits, type Technician } from './habits'
import type { House, Stage } from './houses'
import type { RatingsThen } from './ratingsThen'

type Without<Body, Keys extends string> = Body extends unknown ? Omit<Body, Keys> : never

/** What a visit is made of, and who is there. */
export type VisitSetting = {
  team: Team
  random: () => number
  ratings: RatingsThen
  house: House
  caseId: string
  by: Technician
  on: string
}

type Pause = readonly [number, number]

/** One visit of one technician, record after record in the order of the work. All answer the record's id. */
export type Visit = VisitSetting & {
  visitId: string
  see(finding: string, value: string, note?: string): string
  read(read: Read, more?: Partial<ReadingBody>): string
  testCombustion(body: Omit<CombustionTestBody, 'furnaceId' | 'caseId' | 'visitId'>): string
  checkSwitch(
    stage: Stage,
    body: Without<SwitchCheckBody, 'furnaceId' | 'caseId' | 'visitId' | 'positionId'>,
  ): string
  repair(body: Omit<RepairBody, 'furnaceId' | 'caseId' | 'visitId' | 'on'>, pause?: Pause): string
  say(kind: string, body: object, pause?: Pause): string
  end(body: Omit<EndingBody, 'caseId' | 'visitId'>): string
}

/** Minutes that pass before each kind of thing is said. */
const tap: Pause = [0.2, 1.4]
const reading: Pause = [1.2, 4]

/** A reading as it is written down, of whatever visit. */
export function readingBody(
  { team, random, ratings, house, by, on }: Omit<VisitSetting, 'caseId'>,
  read: Read,
): ReadingBody {
  const { stage, phase, situation, when, door } = read
  const { kind, between, tap: at, stage: named, sense } = stage.place
  const gauge = gaugeOf(by, on)
  const limits = ratings(house, stage, on)
  return {
    furnaceId: house.furnaceId,
    positionId: stage.positionId,
    ...takeReading(random, habits[by], gauge, read),
    sense,
    kind,
    between,
    tap: at,
    stage: named,
    door,
    phase,
    situation,
    when,
    gaugeId: team.gaugeId(gauge),
    ...(limits.length === 0 ? {} : { against: limits }),
  }
}

export function beginVisit(setting: VisitSetting, words: { weather?: string; note?: string } = {}): Visit {
  const { team, house, caseId, by, on } = setting
  const say = (kind: string, body: object, pause?: Pause): string =>
    team.say({ kind, by, on, body, ...(pause && { pause }) })
  const visitId = say('visit', { caseId, on, ...words }, [3, 9])
  const { furnaceId } = house
  const ofVisit = { furnaceId, caseId, visitId }
  return {
    ...setting,
    visitId,
    say,
    see: (finding, value, note) => say('finding', { caseId, visitId, finding, value, note }, tap),
    read: (read, more) =>
      say('reading', { ...readingBody(setting, read), caseId, visitId, ...more }, reading),
    testCombustion: (body) => say('combustion test', { ...ofVisit, ...body }, [1, 3]),
    checkSwitch: (stage, body) =>
      say('switch check', { ...ofVisit, positionId: stage.positionId, ...body }, [4, 9]),
    repair: (body, pause) => say('repair', { ...ofVisit, on, ...body }, pause),
    end: (body) => say('ending', { caseId, visitId, ...body }, [2, 6]),
  }
}
