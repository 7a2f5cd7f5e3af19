import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { LeftUndone } from '@/lib/records/view/leftUndone/leftUndone'
import { leftOffList, unsuitableList } from './dangerLists'
import { disputeList, gaugeList, requestList, worthVerifyingList } from './numberLists'
import type { UndoneList } from './undoneList'
import { notEndedList, notProvenList, oftenBackList } from './workLists'

/** What is left undone, in words, in the order of need: what can hurt people first, then what comes back, then numbers. */
export const undoneLists = (undone: LeftUndone, file: TeamFile): UndoneList[] => [
  unsuitableList(undone.unsuitable),
  leftOffList(undone.leftOff),
  notEndedList(undone.notEnded),
  notProvenList(undone.notProven),
  oftenBackList(undone.oftenBack),
  disputeList(undone.disputes, file),
  requestList(undone.requests, file),
  worthVerifyingList(undone.worthVerifying, file),
  gaugeList(undone.gauges),
]
