'use client'

import { useMemo, useState } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { candidatesOf } from '../../equipment/candidates'
import { RecordPicker } from '../../equipment/form/RecordPicker'
import { todaysFurnaces } from '../../find/todaysFurnaces'
import { ButtonLink } from '../../ui/form/Button'
import { Row } from '../../ui/paper/Stack'

type Props = {
  file: TeamFile
  today: string
  onPick: (id: string) => void
  /** The form that adds a furnace and leads back here. */
  addHref: string
  /** The scanner, which leads back here with the furnace that it found. */
  scanHref: string
  error?: string
}

/** So many are all in sight; of a longer list only today's are offered before anything is typed. */
const inSight = 7

/** The furnace of a new case: today's first, any other by site, model or serial, and a way to add one. */
export function ChooseFurnace({ file, today, onPick, addHref, scanHref, error }: Props) {
  const [typed, setTyped] = useState('')
  const todays = useMemo(() => todaysFurnaces(file, today).map(({ furnace }) => furnace.id), [file, today])
  const candidates = useMemo(() => {
    const all = candidatesOf(file, 'furnace')
    return [
      ...todays.flatMap((id) => all.filter((each) => each.id === id)),
      ...all.filter(({ id }) => !todays.includes(id)),
    ]
  }, [file, todays])
  return (
    <RecordPicker
      legend="Which furnace?"
      name="furnaceId"
      findBy="site, model or serial"
      candidates={candidates}
      offered={candidates.length > inSight ? todays : undefined}
      typed={typed}
      onType={setTyped}
      picked=""
      onPick={onPick}
      error={error}
      missing={
        <Row>
          <ButtonLink kind="quiet" href={scanHref}>
            Scan its tag or serial number
          </ButtonLink>
          <ButtonLink kind="quiet" href={addHref}>
            Not on file? Add the furnace; what is typed here stays
          </ButtonLink>
        </Row>
      }
    />
  )
}
