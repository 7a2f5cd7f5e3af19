'use client'

import { useMemo } from 'react'
import { unsuitableStill } from '@/lib/records/view/swaps/unsuitableStill'
import { useDeviceState } from '../../device/deviceContext'
import { unsuitableList } from '../leftUndone/dangerLists'
import { UndoneSection } from '../leftUndone/UndoneSection'

/** Every furnace with a switch that should not be in it, not yet put right. */
export function UnsuitableSection({ now }: { now: string }) {
  const { file } = useDeviceState()
  const list = useMemo(() => unsuitableList(unsuitableStill(file)), [file])
  return <UndoneSection list={list} now={now} />
}
