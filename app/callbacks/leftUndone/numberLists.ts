import type { TeamFile } from '@/lib/records/fold/teamFile'
import { soonDays } from '@/lib/records/view/leftUndone/gaugesDue'
import type { LeftUndone } from '@/lib/records/view/leftUndone/leftUndone'
import { askedAt, oldRequestDays } from '@/lib/records/view/leftUndone/oldRequests'
import { rangeWords } from '../../equipment/candidates'
import { questionTitle } from '../../phoneDesk/questionWords'
import { setpointHref } from '../../setpoint/setpointAddress'
import { sayDate } from '../../ui/words/sayDate'
import { countOf } from '../countOf'
import type { UndoneList } from './undoneList'

/** Ratings for which proven sources name different numbers. */
export const disputeList = (items: LeftUndone['disputes'], file: TeamFile): UndoneList => ({
  key: 'disputes',
  title: 'Ratings in dispute',
  means: 'Proven sources name different numbers for one switch. The longest in dispute first.',
  todo: 'Ask factory support or look up the maker’s current page, and settle it.',
  items: items.map(({ position, action, furnace, since }) => {
    const range = file.ranges.get(file.keptId(position.body.rangeId))
    return {
      key: `${position.id} ${action} ${furnace?.id ?? ''}`,
      href: setpointHref({
        positionId: position.id,
        ...(furnace === undefined ? {} : { furnaceId: furnace.id }),
      }),
      words: [
        position.body.name,
        `where it ${action}`,
        ...(range === undefined ? [] : [rangeWords(file, range)]),
      ].join(', '),
      since,
      more:
        furnace === undefined
          ? 'for every furnace of the range'
          : `for ${furnace.body.siteLabel} and furnaces like it`,
    }
  }),
  empty: {
    what: 'No rating is in dispute',
    why: 'No two proven sources on file name different numbers for one switch.',
    todo: 'Nothing to settle.',
  },
})

/** Questions from the field that have waited too long. */
export const requestList = (items: LeftUndone['requests'], file: TeamFile): UndoneList => ({
  key: 'requests',
  title: 'Rating requests grown old',
  means: `Asked more than ${oldRequestDays} days ago, and no answer on file. The oldest first.`,
  todo: 'Ring again, or ask another organisation.',
  items: items.map((question) => ({
    key: question.lead.id,
    href: `/call?request=${question.lead.id}`,
    words: questionTitle(file, question),
    since: askedAt(question),
    more: `${countOf(question.calls.length, 'call')} so far, asked by ${countOf(question.askers.length, 'person', 'people')}`,
  })),
  empty: {
    what: 'No request has grown old',
    why: `Every rating request has its answer, or was asked within the last ${oldRequestDays} days.`,
    todo: 'Younger ones are on the Phone desk.',
  },
})

/** Ratings that a quiet hour is best spent on. */
export const worthVerifyingList = (items: LeftUndone['worthVerifying'], file: TeamFile): UndoneList => ({
  key: 'worthVerifying',
  title: 'Ratings most used and least verified',
  means: 'By how many furnaces and open questions depend on the number, times how unsure it is.',
  todo: 'Spend a quiet hour on a call for the first of them.',
  items: items.map(({ key, position, level, furnaces, asked }) => {
    const range = file.ranges.get(file.keptId(position.body.rangeId))
    return {
      key,
      href: setpointHref({ positionId: position.id }),
      words: [position.body.name, ...(range === undefined ? [] : [rangeWords(file, range)])].join(', '),
      more: `${level}; ${countOf(furnaces, 'furnace')} we worked on, ${countOf(asked, 'open question')}`,
    }
  }),
  empty: {
    what: 'Nothing is worth a call just now',
    why: 'Every rating that our furnaces or open questions depend on is Verified, or none is on record yet.',
    todo: 'Furnaces count from their first case, repair or baseline.',
  },
})

/** Gauges to be calibrated. */
export const gaugeList = (items: LeftUndone['gauges']): UndoneList => ({
  key: 'gauges',
  title: 'Gauges due',
  means: `Calibration past, due within ${soonDays} days, or with no date on file. No switch may be called faulty on a gauge past its date.`,
  todo: 'Send it away, or read its date off its sheet.',
  items: items.map(({ gauge, standing, days }) => ({
    key: gauge.id,
    href: `/record?id=${gauge.id}`,
    words: gauge.body.name,
    more:
      standing === 'no date on file'
        ? 'no calibration date on file'
        : `${standing === 'past' ? 'past since' : 'due'} ${sayDate(gauge.body.calibrationDue ?? '')}, ${daysWords(days ?? 0)}`,
  })),
  empty: {
    what: 'No gauge is due',
    why: `Every gauge on file is calibrated for more than ${soonDays} days yet.`,
    todo: 'Nothing to send away.',
  },
})

const daysWords = (days: number): string =>
  days === 0 ? 'today' : days < 0 ? `${countOf(-days, 'day')} ago` : `in ${countOf(days, 'day')}`
