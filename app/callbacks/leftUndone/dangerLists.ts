import type { LeftUndone } from '@/lib/records/view/leftUndone/leftUndone'
import { furnaceWords } from '../../equipment/candidates'
import { whatWords } from '../../foundFitted/fittedWords'
import type { UndoneList } from './undoneList'

/** Switches that should not be in a furnace and are. */
export const unsuitableList = (items: LeftUndone['unsuitable']): UndoneList => ({
  key: 'unsuitable',
  title: 'Unsuitable switches still fitted',
  means:
    'Found fitted although they should not be, and no factory part on record since. Furnaces that may still be running come first.',
  todo: 'Leave the furnace off until the factory part is in.',
  items: items.map(({ id, at, furnace, model, what, printed, leftOff }) => ({
    key: id,
    href: furnace === undefined ? `/record?id=${id}` : `/furnace?id=${furnace.id}`,
    words:
      furnace === undefined ? `Model ${model ?? 'not recorded'}, furnace not named` : furnaceWords(furnace),
    since: at,
    more: [
      what === 'part number of a general-purpose switch'
        ? 'A general-purpose switch by its part number'
        : whatWords[what][0],
      `printed ${printed}`,
      leftOff ? 'the furnace is left off' : 'the furnace is not left off',
    ].join(', '),
  })),
  empty: {
    what: 'No unsuitable switch is on record as fitted',
    why: 'Every one that was found has its factory part back.',
    todo: 'Who finds one records it as found fitted, from the setpoint or the furnace.',
  },
})

/** Furnaces that may not be lit. */
export const leftOffList = (items: LeftUndone['leftOff']): UndoneList => ({
  key: 'leftOff',
  title: 'Furnaces left off',
  means:
    'Off by a shut-down notice that nobody has lifted, or by a visit that ended so. Those without a notice come first, then the longest off.',
  todo: 'See that the house is warm, and that somebody has the repair in hand.',
  items: items.map(({ furnace, since, noticeId, caseId, found }) => ({
    key: furnace.id,
    href: noticeId === undefined ? `/case?id=${caseId}` : `/notice?id=${noticeId}`,
    words: furnaceWords(furnace),
    since,
    more: found ?? 'no notice was written: nothing hangs at the furnace',
  })),
  empty: {
    what: 'No furnace is left off',
    why: 'Every shut-down notice on record has been lifted.',
    todo: 'A furnace left off is listed here from the notice on.',
  },
})
