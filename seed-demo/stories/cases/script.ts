import { toPascals } from '@/lib/core/pressure'
import type { CaseBody } from '@/lib/records/kinds/case'
import type { EndingBody } from '@/lib/records/kinds/ending'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import type { VisitBody } from '@/lib/records/kinds/visit'
import type { CaseTelling } from '../../cases/callTypes'
import type { Technician } from '../../cases/habits'
import { type House, houseAt, type Stage } from '../../cases/houses'
import { fitSwitch, proof, readAfter } from '../../cases/mend'
import { beginVisit, type Visit } from '../../cases/visit'
import type { PersonKey } from '../../people'
import { inches } from '../../writing'

/** What one reading is said to show: hundredths of an inch, in the order of the samples. */
export type Shown = Partial<ReadingBody> & { lowestHundredths?: number }

/** A case told by hand, on a furnace that was on file before. */
export type Told = {
  house: House
  caseId: string
  stage(place: string): Stage
  visit(by: Technician, on: string, words?: Omit<VisitBody, 'caseId' | 'on'>): ToldVisit
}

export type ToldVisit = Visit & {
  /** Reads by hand: the numbers stand as they are given. */
  show(place: string, hundredths: readonly number[], phase: ReadingBody['phase'], more?: Shown): string
  /** Reads every stage and CO, and ends the visit as repaired and proven, nothing forgotten. */
  endProven(body: Omit<EndingBody, 'caseId' | 'visitId' | 'how'>): void
  fitFactorySwitch(done: string, minutes: number): string
}

export function openToldCase(
  telling: CaseTelling,
  siteLabel: string,
  call: { by: PersonKey; on: string; body: Omit<CaseBody, 'furnaceId' | 'circuit'> },
): Told {
  const { team, random } = telling
  const house = houseAt(team, random, siteLabel)
  const { by, on, body } = call
  const caseId = team.say({
    kind: 'case',
    by,
    on,
    body: { furnaceId: house.furnaceId, circuit: 'proving circuit', ...body },
  })
  const stage = (place: string) => {
    const found = house.stages.find(({ at }) => at.endsWith(` / ${place}`))
    if (found === undefined)
      throw new RangeError(`${siteLabel} has no switch that proves air called “${place}”`)
    return found
  }
  return {
    house,
    caseId,
    stage,
    visit: (who, day, words) =>
      toldVisit(beginVisit({ ...telling, house, caseId, by: who, on: day }, words), stage),
  }
}

function toldVisit(visit: Visit, stage: Told['stage']): ToldVisit {
  return {
    ...visit,
    show(place, hundredths, phase, { lowestHundredths, ...more } = {}) {
      const isHot = phase === 'after light-off' || phase === 'steady hot'
      const pascals = hundredths.map((value) => toPascals(Number(inches(value)), 'inH2O'))
      const lowest =
        lowestHundredths === undefined ? Math.min(...pascals) : toPascals(lowestHundredths / 100, 'inH2O')
      return visit.read(
        {
          stage: stage(place),
          faults: [],
          temperature: isHot ? 'hot' : 'cold',
          situation: more.situation ?? 'as found',
          door: more.door ?? 'on',
          phase,
          when: more.when ?? 'as found',
        },
        {
          samples: pascals,
          lowest: isHot ? lowest : undefined,
          movement: 'still',
          secondsWatched: 60,
          asTyped: `${hundredths.map(inches).join(', ')} in. w.c.`,
          ...more,
        },
      )
    },
    endProven(body) {
      readAfter(visit, [], false)
      visit.end({
        how: 'repaired and proven',
        confirmingTest: 'confirmed',
        ...proof({ ...visit, random: () => 0.99 }),
        ...body,
      })
    },
    fitFactorySwitch: (done, minutes) => fitSwitch(visit, done, minutes),
  }
}
