import { senseWords } from '@/lib/catalogue/switchKinds'
import { formatPressure, type PressureText, type PressureUnit } from '@/lib/core/pressure'
import type { DatedLevel } from '../ui/words/LevelWord'
import { otherUnit, toleranceWords } from '../ui/words/pressureWords'
import { Quiet } from '../ui/words/Quiet'

type Props = {
  values: readonly PressureText[]
  unit: PressureUnit
  /** The level that the n-th value would have once it is saved. */
  levelOf: (index: number) => DatedLevel['level']
}

const actionText = { closes: 'closes at', opens: 'opens at' } as const

/** What was understood of the text, shown back so that a slip is seen before it is saved. */
export function WhatItSays({ values, unit, levelOf }: Props) {
  return (
    <div role="status">
      <p>Read as:</p>
      <ul>
        {values.map((value, index) => (
          <li key={`${value.action ?? index}`}>
            <b>
              {value.action === undefined ? '' : `${actionText[value.action]} `}
              {formatPressure(value.pascals, value.unit, value.decimals)}{' '}
              {toleranceWords({ ...value, limit: value.limit ?? 'nominal' }, value.unit, value.decimals)}
            </b>{' '}
            <Quiet inline>
              {formatPressure(value.pascals, value.unit === unit ? otherUnit(unit) : unit)},{' '}
              {senseWords[value.sense]}
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
    </div>
  )
}
