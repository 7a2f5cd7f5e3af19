'use client'

import { circuits } from '@/lib/core/callbacks/cases'
import { useDeviceState } from '../../device/deviceContext'
import { leadingBack } from '../../equipment/form/returnTo'
import { LeftOffBanner } from '../../furnace/LeftOffBanner'
import { Problem } from '../../ui/answers/Problem'
import { Caution } from '../../ui/danger/Caution'
import { Button } from '../../ui/form/Button'
import { Choice } from '../../ui/form/Choice'
import { Form } from '../../ui/form/Form'
import { TextField } from '../../ui/form/TextField'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Sheet } from '../../ui/paper/Sheet'
import { Row, Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { capitalised } from '../work/capitalised'
import { ChooseFurnace } from './ChooseFurnace'
import { EarlierCase } from './EarlierCase'
import { SerialToday } from './SerialToday'
import { useNewCase } from './useNewCase'
import { VisitFields } from './VisitFields'
import { WhichFurnace } from './WhichFurnace'

/** Opens a case on a furnace with its first visit, in one step. */
export function NewCaseScreen() {
  const { file, names } = useDeviceState()
  const { draft, startAfresh, furnace, choose, here, today, now, save, gaps, refusal } = useNewCase()
  const { value: form, change } = draft
  return (
    <Stack>
      <PageHeader
        above={<a href="/cases">Cases</a>}
        title="New case"
        lead="The history of one complaint on one furnace. It begins with this visit."
      />
      {furnace !== undefined && <LeftOffBanner furnaceId={furnace.id} {...{ file, names }} />}
      <Caution />
      <Form save={save}>
        <Sheet
          foot={
            <Button type="submit" kind="main">
              Open the case
            </Button>
          }
        >
          <Stack>
            <Problem>{draft.lost}</Problem>
            {draft.restored && (
              <Row>
                <Quiet inline>This is what you typed here before.</Quiet>
                <Button kind="quiet" onClick={startAfresh}>
                  Start afresh
                </Button>
              </Row>
            )}
            {furnace === undefined ? (
              <ChooseFurnace
                {...{ file, today }}
                onPick={choose}
                addHref={leadingBack('/furnace/add', here)}
                scanHref={leadingBack('/scan?take=furnace', here)}
                error={gaps.furnaceId}
              />
            ) : (
              <WhichFurnace {...{ furnace, file }} onPick={choose} />
            )}
            {furnace !== undefined && (
              <EarlierCase furnaceId={furnace.id} circuit={form.circuit} {...{ file, now }} />
            )}
            <TextField
              label="What is complained of"
              name="complaint"
              hint="In the words of the caller, for instance: no heat since last night, a light blinks."
              value={form.complaint}
              onChange={(event) => change({ complaint: event.target.value })}
              error={gaps.complaint}
            />
            <Choice
              legend="What is it about?"
              name="circuit"
              options={circuits.map((value) => ({
                value,
                words: capitalised(value),
                hint: circuitHints[value],
              }))}
              value={form.circuit === '' ? null : form.circuit}
              onChoose={(circuit) => change({ circuit })}
              error={gaps.circuit}
            />
            <TextField
              exact
              label="Serial number on the plate today"
              name="serialSeen"
              hint="Tells whether the same furnace still stands there."
              value={form.serialSeen}
              onChange={(event) => change({ serialSeen: event.target.value })}
              error={gaps.serialSeen}
            />
            {furnace !== undefined && (
              <SerialToday
                typed={form.serialSeen}
                {...{ furnace, file }}
                onPick={choose}
                replaceHref={leadingBack(
                  `/furnace/add?${new URLSearchParams({ replaces: furnace.id, serial: form.serialSeen.trim() })}`,
                  here,
                )}
              />
            )}
            <VisitFields {...{ form, change, gaps }} />
            <Problem>{refusal}</Problem>
          </Stack>
        </Sheet>
      </Form>
    </Stack>
  )
}

const circuitHints = {
  'proving circuit': 'It locks out, or will not prove air: a pressure switch, hose, vent, drain or inducer.',
  'something else': 'Anything else that is complained of.',
} as const
