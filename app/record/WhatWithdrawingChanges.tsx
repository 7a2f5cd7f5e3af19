'use client'

import { useMemo, useState } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type WithdrawalEffect, withdrawalEffects } from '@/lib/records/view/withdrawalEffects'
import { useDeviceState } from '../device/deviceContext'
import { furnaceWords, rangeWords } from '../equipment/candidates'
import { thingsWords } from '../oldList/verdictWords'
import { questionTitle } from '../phoneDesk/questionWords'
import { actionWords } from '../ui/words/actionWords'

/** What would be another once these records are withdrawn, said before they are. */
export function WhatWithdrawingChanges({ recordIds }: { recordIds: readonly string[] }) {
  const { file, me } = useDeviceState()
  const [saidAt] = useState(() => new Date().toISOString())
  const key = recordIds.join(' ')
  const effects = useMemo(
    () => withdrawalEffects(file, key.split(' '), { id: me.id, saidAt }),
    [file, key, me.id, saidAt],
  )
  return (
    <div role="status">
      <p>Nothing is withdrawn yet. Once it is:</p>
      <ul>
        {effects.length === 0 ? (
          <li>Every rating and every question stays as it is.</li>
        ) : (
          effects.map((effect) => {
            const words = effectWords(file, effect)
            return <li key={words}>{words}</li>
          })
        )}
      </ul>
    </div>
  )
}

function effectWords(file: TeamFile, effect: WithdrawalEffect): string {
  if ('things' in effect) return importWords(effect)
  if (effect.what !== 'standing')
    return `${questionTitle(file, effect.question)}: ${
      effect.what === 'question opens'
        ? 'the question is open again, for nobody else has answered it.'
        : 'nobody asks it any more, and it leaves the Phone desk.'
    }`
  const { position, furnace, action, before, after } = effect
  const range = file.ranges.get(file.keptId(position.body.rangeId))
  const another =
    before.pascals !== undefined && after.pascals !== undefined && before.pascals !== after.pascals
      ? ', with another number'
      : ''
  return [
    [position.body.name, range && rangeWords(file, range)].filter(Boolean).join(', '),
    furnace === undefined ? '' : `, for ${furnaceWords(furnace)}`,
    `: ${actionWords[action].name}, ${before.level} now. Would stand as: ${after.level}${another}.`,
  ].join('')
}

function importWords({
  what,
  reports,
  positions,
  things,
}: Extract<WithdrawalEffect, { things: unknown }>): string {
  const many = (count: number, word: string) => `${count} ${word}${count === 1 ? '' : 's'}`
  const added = thingsWords(things)
  const [counts, worked, withThem] =
    what === 'import goes' ? ['no more', 'without', 'With them go'] : ['again', 'with', 'With them come back']
  return [
    `${many(reports, 'report')} of the list, at ${many(positions, 'switch position')}, ${reports === 1 ? 'counts' : 'count'} ${counts}: ratings there are worked out ${worked} them.`,
    added === '' ? '' : ` ${withThem}: ${added}.`,
  ].join('')
}
