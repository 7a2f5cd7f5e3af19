import { isAtLeast, thresholds } from '@/lib/catalogue/fromReadings/thresholds'
import { type DangerCode, dangerIn } from '@/lib/core/guard'
import type { SwitchKind } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { SwitchCheckBody } from '@/lib/records/kinds/switchCheck'
import type { CaseFile } from './caseFile'
import type { JudgedReading } from './judgedReading'
import type { Sighting } from './openSince'
import { replacementsAt } from './switchParts'

/** Dangers of a switch that does not follow its pressure. */
const ofSwitch = [
  'switch-closed-at-rest',
  'switch-closes-below-rating',
  'switch-stays-closed-above-opening-point',
] as const satisfies readonly DangerCode[]

/**
 * What readings and checks at rest show of the switch in each position, oldest first. A reading that is merely enough
 * shows nothing: a switch that is stuck or bypassed is closed then as well. The danger is gone when the contact is
 * seen to open where it should, or when a factory part has been fitted. Ruling it out by hand, which names no position,
 * takes nothing back that was measured at one.
 * @returns the sightings of each thing that is looked at, in any order
 */
export function switchSightings(
  team: TeamFile,
  file: CaseFile,
  judged: readonly JudgedReading[],
): Sighting[][] {
  const byPosition = new Map<string, Sighting[]>()
  const at = (positionId: string | undefined, what = ''): Sighting[] => {
    const key = `${positionId === undefined ? '' : team.keptId(positionId)}${what}`
    const known = byPosition.get(key) ?? []
    byPosition.set(key, known)
    return known
  }
  for (const one of judged) {
    at(one.positionId).push(fromReading(one))
    at(one.positionId, aboutZero).push(...fromAboutZero(one))
  }
  for (const check of file.switchChecks)
    at(check.body.positionId).push(...fromCheck(check, kindOf(team, check.body.positionId)))
  for (const [key, sightings] of byPosition) {
    const positionId = key.replace(aboutZero, '')
    if (positionId === '') sightings.push(...ruledOut(file))
    else
      for (const repair of replacementsAt(team, file.furnace.id, positionId))
        sightings.push({ at: repair.at, visitId: repair.body.visitId, shows: [], rulesOut: ofSwitch })
    // Of one moment, what shows a danger comes last: it stays.
    sightings.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : b.rulesOut.length - a.rulesOut.length))
  }
  return [...byPosition.values()]
}

function fromReading({ entry, comparison }: JudgedReading): Sighting {
  const { phase, contacts, kind, visitId } = entry.body
  const advice = comparison.ok ? comparison.value.advice : []
  const closedAtRest = phase === 'rest' && contacts === 'closed' && isOpenAtRest(kind)
  return {
    at: entry.at,
    visitId,
    // At rest it is one whatever the gauge shows, and whether or not it was zeroed.
    shows: closedAtRest
      ? ['switch-closed-at-rest']
      : dangerIn([], { comparisons: comparison.ok ? [comparison.value] : [] }).map(({ code }) => code),
    rulesOut: advice.includes('open-contact-agrees-leave-it-fitted')
      ? ofSwitch
      : advice.includes('rest-agrees') && isOpenAtRest(kind)
        ? ['switch-closed-at-rest']
        : [],
  }
}

/** A second thing to look at in each position: whether it is closed with nothing to close it. */
const aboutZero = ' about zero'

/**
 * The inducer runs, and the contact is closed with next to nothing at the switch: that needs neither a rating nor a
 * gauge on record to be wrong. What is read at one port of two says nothing of what the switch feels.
 */
function fromAboutZero({ entry: { at, body }, comparison }: JudgedReading): Sighting[] {
  const { samples, phase, contacts, kind, between, visitId } = body
  const code = ['switch-closes-below-rating'] as const
  const verdicts = comparison.ok ? [comparison.value.start?.verdict, comparison.value.run?.verdict] : []
  const feels = kind === 'one-port' || (kind === 'two-port' && between === 'two ports')
  const mean = samples.reduce((sum, sample) => sum + sample, 0) / samples.length
  if (phase === 'rest' || !feels) return []
  // What is open at some suction is open at less as well.
  if (contacts === 'open') return [{ at, visitId, shows: [], rulesOut: code }]
  const isShown =
    contacts === 'closed' && isAtLeast(thresholds.nearZero, mean) && !verdicts.includes('enough')
  return isShown ? [{ at, visitId, shows: code, rulesOut: [] }] : []
}

function fromCheck({ body, at }: Entry<SwitchCheckBody>, kind: SwitchKind | undefined): Sighting[] {
  if (body.what !== 'at rest' || !body.inducerStopped || kind === undefined || !isOpenAtRest(kind)) return []
  const code = ['switch-closed-at-rest'] as const
  return [
    {
      at,
      visitId: body.visitId,
      shows: body.contact === 'closed' ? code : [],
      rulesOut: body.contact === 'open' ? code : [],
    },
  ]
}

/** One that opens on rise is closed at rest, as it should be. */
const isOpenAtRest = (kind: SwitchKind): boolean => kind !== 'opens on rise'

const kindOf = (team: TeamFile, positionId: string): SwitchKind | undefined =>
  team.positions.get(team.keptId(positionId))?.body.kind

/** What somebody has tapped as ruled out: it can only be about what was measured at no position. */
const ruledOut = ({ findings }: CaseFile): Sighting[] =>
  findings.flatMap(({ at, body }) => {
    const code = ofSwitch.find((each) => each === body.finding)
    return code === undefined || body.value !== 'ruled out'
      ? []
      : [{ at, visitId: body.visitId, shows: [], rulesOut: [code] }]
  })
