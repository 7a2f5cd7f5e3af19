'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { candidatesOf, furnaceWords } from '../equipment/candidates'
import { RecordPicker } from '../equipment/form/RecordPicker'
import { leadingBack, returnTo } from '../equipment/form/returnTo'
import { dayOf } from '../equipment/form/today'
import { todaysFurnaces } from '../find/todaysFurnaces'
import { answering } from '../scan/scanAddress'
import { Problem } from '../ui/answers/Problem'
import { Button, ButtonLink } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'

/** Asks which furnace a tag is on, and records it. */
export function StickOn({ code }: { code: string }) {
  const query = useSearchParams()
  const router = useRouter()
  const { file } = useDeviceState()
  const { add, trouble } = useAdd()
  const [typed, setTyped] = useState('')
  // A furnace that was added on the way comes back as `on`; one whose page this came from as `furnace`.
  const [picked, setPicked] = useState(() => file.keptId(query.get('on') ?? query.get('furnace') ?? ''))
  const [tried, setTried] = useState(false)
  const candidates = useMemo(() => candidatesOf(file, 'furnace'), [file])
  const todays = useMemo(
    () => todaysFurnaces(file, dayOf(new Date())).map(({ furnace }) => furnace.id),
    [file],
  )
  const furnace = file.furnaces.get(picked)
  const then = returnTo(query, '')
  const here = then === '' ? `/t?c=${code}` : leadingBack(`/t?c=${code}`, then)

  async function save(): Promise<boolean> {
    setTried(true)
    if (furnace === undefined) return false
    const ids = await add([{ kind: 'tag', body: { code, furnaceId: furnace.id } }])
    if (ids === undefined) return false
    router.push(then === '' ? `/furnace?id=${furnace.id}` : answering(then, 'on', furnace.id))
    return true
  }

  return (
    <Form save={save}>
      <Sheet
        title="It is on no furnace"
        foot={
          <Button type="submit" kind="main">
            {furnace === undefined ? 'Record where it is' : `Record: it is on ${furnace.body.siteLabel}`}
          </Button>
        }
      >
        <Stack>
          <p>
            Stick it where it stays dry and cool, not on a door or panel that can end up on another furnace.
          </p>
          <RecordPicker
            legend="Which furnace is this on?"
            name="furnaceId"
            findBy="site, model or serial"
            candidates={candidates}
            offered={candidates.length > inSight ? todays : undefined}
            typed={typed}
            onType={setTyped}
            picked={picked}
            onPick={setPicked}
            error={
              tried && furnace === undefined ? 'Choose the furnace, or add it.' : trouble?.fields.furnaceId
            }
            missing={
              <ButtonLink kind="quiet" href={leadingBack('/furnace/add', here)}>
                Not on file? Add the furnace
              </ButtonLink>
            }
          />
          {furnace !== undefined && <p>Compare the data plate: {furnaceWords(furnace)}.</p>}
          <Problem>{trouble?.fields.code ?? trouble?.refusal?.sentence}</Problem>
        </Stack>
      </Sheet>
    </Form>
  )
}

/** So many are all in sight; of a longer list only today's are offered before anything is typed. */
const inSight = 7
