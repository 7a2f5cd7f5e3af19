import type { LeftUndone } from '@/lib/records/view/leftUndone/leftUndone'
import { oftenBackRepeats } from '@/lib/records/view/leftUndone/oftenBack'
import { causeName } from '../../cases/work/causeName'
import { furnaceWords } from '../../equipment/candidates'
import type { UndoneList } from './undoneList'

/** Visits of which nobody said how they ended. */
export const notEndedList = (items: LeftUndone['notEnded']): UndoneList => ({
  key: 'notEnded',
  title: 'Visits never ended',
  means: 'Nobody has said how the visit ended, so nobody knows how the furnace was left. The oldest first.',
  todo: 'Ask whoever was there, and end the visit.',
  items: items.map(({ visit, caseId, furnace }) => ({
    key: visit.id,
    href: `/case/end?id=${caseId}&visit=${visit.id}`,
    words: furnaceWords(furnace),
    since: visit.body.on,
    more: 'visit not ended',
  })),
  empty: {
    what: 'Every visit is ended',
    why: 'Each has its ending, by whoever was there.',
    todo: 'A visit is listed here from its beginning until somebody ends it.',
  },
})

/** Repairs that nothing on record proves. */
export const notProvenList = (items: LeftUndone['notProven']): UndoneList => ({
  key: 'notProven',
  title: 'Repairs not proven',
  means:
    'Repaired, and nothing on record shows that it holds; also where the proof lacks something. A later case on the same furnace and circuit takes its place. The oldest first.',
  todo: 'Go back for the readings that prove it, or plan them into the next service.',
  items: items.map(({ caseId, furnace, endedAt, saidProven, lacks }) => ({
    key: caseId,
    href: `/case?id=${caseId}`,
    words: furnaceWords(furnace),
    since: endedAt,
    more: saidProven ? `said to be proven, and lacks: ${lacks.join(' ')}` : 'ended as repaired, not proven',
  })),
  empty: {
    what: 'Every repair is proven',
    why: 'Each case that ended as repaired has its readings and tests after the repair.',
    todo: 'A repair is listed here until its proof is on record.',
  },
})

/** Furnaces that came back again and again. */
export const oftenBackList = (items: LeftUndone['oftenBack']): UndoneList => ({
  key: 'oftenBack',
  title: `Furnaces with ${oftenBackRepeats} or more repeats`,
  means:
    'Came back within 30 days of a finished job, about the proving circuit, twice or more in the last year. Most repeats first.',
  todo: 'Read the cases together before anybody goes again: the cause named first may not be the cause.',
  items: items.map(({ furnace, repeats, lastAt }) => ({
    key: furnace.id,
    href: `/furnace?id=${furnace.id}`,
    words: furnaceWords(furnace),
    since: lastAt,
    more: `${repeats.length} repeats; causes named: ${causesOf(repeats.flatMap(({ earlierCause, laterCause }) => [earlierCause, laterCause]))}`,
  })),
  empty: {
    what: 'No furnace came back twice',
    why: 'In the last year no furnace was called back two times within 30 days each.',
    todo: 'Nothing to do.',
  },
})

const causesOf = (causes: readonly string[]): string =>
  [...new Set(causes)].map((cause) => (cause === 'not named' ? 'none' : causeName(cause))).join(', then ')
