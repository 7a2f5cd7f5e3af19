import { senseWords } from '@/lib/catalogue/switchKinds'
import { formatPressure, type PressureText, type PressureUnit } from '@/lib/core/pressure'
import type { Action, Sense, SwitchKind } from '@/lib/core/vocabulary'
import type { DatedLevel } from '../ui/words/LevelWord'
import { otherUnit, toleranceWords } from '../ui/words/pressureWords'
import { Quiet } from '../ui/words/Quiet'
import { looksTurnedRound, turnedRound } from './turnedRound'

type Props = {
  values: readonly PressureText[]
  /** What was answered to the questions that the text leaves open, value by value. */
  answered: readonly { action: Action; sense: Sense }[]
  unit: PressureUnit
  /** The level that the n-th value would have once it is saved. */
  levelOf: (index: number) => DatedLevel['level']
  /** What the switch is: it decides which of two numbers has to be the smaller. */
  kind: SwitchKind
}

const actionText = { closes: 'closes at ', opens: 'opens at ', 'not stated': '' } as const

/** What was understood of the text, shown back so that a slip is seen before it is saved. */
export function WhatItSays({ values, answered, unit, levelOf, kind }: Props) {
  return (
    <div role="status">
      <p>Read as:</p>
      <ul>
        {values.map((value, index) => (
          <li key={`${value.action ?? index}`}>
            <b>
              {actionText[value.action ?? answered[index]?.action ?? 'not stated']}
              {formatPressure(value.pascals, value.unit, value.decimals)}{' '}
              {toleranceWords({ ...value, limit: value.limit ?? 'nominal' }, value.unit, value.decimals)}
            </b>{' '}
            <Quiet inline>
              {formatPressure(value.pascals, value.unit === unit ? otherUnit(unit) : unit)},{' '}
              {
                senseWords[
                  value.sense === 'not stated' ? (answered[index]?.sense ?? 'not stated') : value.sense
                ]
              }
            </Quiet>
            <p>
              Not saved yet. Would stand as: <b>{levelOf(index)}</b>
            </p>
            {value.warnings.map((warning) => (
              <p key={warning.code}>Look again: {warning.message}</p>
            ))}
          </li>
        ))}
      </ul>
      {looksTurnedRound(values, kind) && (
        <div>
          <p>Look again: {turnedRound.words}</p>
          <p>Ask back: “{turnedRound.askBack}”</p>
        </div>
      )}
    </div>
  )
}
