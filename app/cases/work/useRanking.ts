'use client'

import { useDeferredValue, useMemo, useRef } from 'react'
import { checkMinutes } from '@/lib/catalogue/checks'
import { diagnosisCatalogue } from '@/lib/catalogue/diagnosisCatalogue'
import { observationsOnList } from '@/lib/catalogue/findings/readableFinding'
import {
  learnedLikelihoods,
  type PackedCases,
  type PlannedCheck,
  packCases,
  type RankedCause,
  rankCauses,
  type SimilarCase,
  similarCases,
  suggestChecks,
} from '@/lib/core/diagnosis'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { contextOf } from '@/lib/records/view/case/context'
import { pastCases } from '@/lib/records/view/case/pastCases'
import { recordsBeside } from './recordsBeside'

/** How many past cases "cases like this" are counted over. */
const likeThis = 5

/** The team's past cases, packed for ranking. */
type LearnedCases = { count: number; packed: PackedCases }

export type Ranking = {
  ranked: RankedCause[]
  planned: PlannedCheck[]
  /** The past cases nearest to this one, whatever their cause. */
  similar: SimilarCase[]
  /** How many past cases the team has to learn from. */
  casesOnFile: number
}

/**
 * What the findings so far say: the ranked causes, what to look at next, and the past cases most like this one. It
 * lags behind a tap where the device is slow, and never holds the tap up.
 */
export function useRanking(file: TeamFile, view: CaseView, now: string): Ranking {
  const lateFile = useDeferredValue(file)
  const lateView = useDeferredValue(view)
  const caseId = lateView.file.entry.id
  // What other cases teach is worked out anew only when something was said of them: it takes longer than a tap may.
  const beside = recordsBeside(lateFile, caseId)
  const kept = useRef<{ beside: number; cases: LearnedCases }>(undefined)
  if (kept.current?.beside !== beside) {
    const past = pastCases(lateFile, now, caseId)
    kept.current = { beside, cases: { count: past.length, packed: packCases(diagnosisCatalogue, past) } }
  }
  const { cases } = kept.current
  return useMemo(() => {
    const observed = observationsOnList(lateView.observed)
    const context = contextOf(lateFile, lateView.file)
    const asked = { catalogue: diagnosisCatalogue, cases: cases.packed, observed, context }
    const ranked = rankCauses(asked)
    return {
      ranked,
      planned: suggestChecks({
        ranked,
        catalogue: diagnosisCatalogue,
        observed,
        costs: checkMinutes,
        likelihoods: learnedLikelihoods(asked),
      }),
      similar: similarCases({ cases: cases.packed, observed, context, k: likeThis }),
      casesOnFile: cases.count,
    }
  }, [cases, lateFile, lateView])
}
