import { betweenWords, senseWords, stageWords, tapWords } from '@/lib/catalogue/switchKinds'
import type { PositionBody } from '@/lib/records/kinds/position'

/** What a number of this position is worth nothing without, in one line. */
export const bundleLine = ({
  stage,
  sense,
  between,
  tap,
}: Pick<PositionBody, 'stage' | 'sense' | 'between' | 'tap'>): string =>
  [
    stageWords[stage],
    senseWords[sense],
    `${tap === 'not stated' ? '' : `at the ${tapWords[tap]}, `}${betweenWords[between]}`,
  ].join(' · ')
