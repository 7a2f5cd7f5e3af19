'use client'

import { useSearchParams } from 'next/navigation'
import { type Action, actions } from '@/lib/core/vocabulary'
import { settlement } from '@/lib/records/kinds/settlement'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { bundleLine } from '../setpoint/bundleWords'
import { type SetpointAddress, setpointHref, setpointQuery } from '../setpoint/setpointAddress'
import { useSetpoint } from '../setpoint/useSetpoint'
import { Empty } from '../ui/answers/Empty'
import { Refusal } from '../ui/answers/Refusal'
import { ButtonLink } from '../ui/form/Button'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { actionWords } from '../ui/words/actionWords'
import { type Side, sidesOf, standingOf } from './dispute'
import { SettleForm } from './SettleForm'
import { SideSheet } from './SideSheet'

/** Settles a dispute about a rating, with new evidence and nothing else. */
export function SettleScreen() {
  const query = useSearchParams()
  const { address, setpoint, now } = useSetpoint()
  const action = actions.find((each) => each === query.get('action'))
  if (address === undefined || setpoint === undefined || action === undefined) {
    return (
      <Stack>
        <PageHeader above={<a href="/">Find</a>} title="Settle the dispute" />
        <Empty
          what="There is nothing to settle here"
          why="The address names no rating that is on this device."
          todo={<a href="/">Find the switch</a>}
        />
      </Stack>
    )
  }
  if (standingOf(setpoint, action).level !== 'In dispute') {
    return (
      <Stack>
        <PageHeader above={<a href={setpointHref(address)}>Setpoint</a>} title="Settle the dispute" />
        <Empty
          what="This rating is not in dispute"
          why="Its sources do not stand against each other, or the dispute is settled already."
          todo={<a href={setpointHref(address)}>Back to the setpoint</a>}
        />
      </Stack>
    )
  }
  return <Dispute {...{ address, setpoint, action, now }} />
}

type Props = { address: SetpointAddress; setpoint: Setpoint; action: Action; now: string }

function Dispute({ address, setpoint, action, now }: Props) {
  const { me, names } = useDeviceState()
  const { unit } = usePreference()
  const standing = standingOf(setpoint, action)
  const sides = sidesOf(standing)
  return (
    <Stack>
      <PageHeader
        above={<a href={setpointHref(address)}>Setpoint</a>}
        title="Settle the dispute"
        lead={`${actionWords[action].name}: ${setpoint.position.body.name}, ${[setpoint.maker?.body.name, setpoint.range.body.name].filter(Boolean).join(' ')} · ${bundleLine(setpoint.position.body)}`}
      />
      {sides.map((side, index) => (
        <SideSheet
          key={side.reportIds.join(' ')}
          title={sideTitle(side, index, sides.length)}
          {...{ side, action, setpoint, unit, names }}
        />
      ))}
      <Sheet title="Why it is in dispute">
        <ul>
          {standing.reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      </Sheet>
      <Sheet
        title="What would settle it"
        foot={<ButtonLink href={`/report?${setpointQuery(address)}`}>Add that report</ButtonLink>}
      >
        <ul>
          <li>
            Factory technical support, asked for this model and serial, with the reference of the call or
            e-mail. Read the number back digit by digit, and ask which of the two it is: where it closes, or
            where it opens.
          </li>
          <li>
            The page of the maker’s current literature for this model and revision. Check it against its
            neighbours: tables have misprints.
          </li>
        </ul>
        <p>Nothing else does: not a majority, not a bench check, and nobody’s say-so.</p>
      </Sheet>
      {settlement.mayAdd.includes(me.role) ? (
        <SettleForm {...{ address, setpoint, action, now }} />
      ) : (
        <Refusal
          title="A dispatcher or manager settles it"
          rule="who may add what"
          why="What a settlement overrules stops counting for everybody, so it is left to those who keep the file."
          instead={
            <>
              You can <a href={`/report?${setpointQuery(address)}`}>add the report that would settle it</a>,
              or <a href={`/ask?${setpointQuery(address)}`}>ask the Phone desk for it</a>.
            </>
          }
        />
      )}
    </Stack>
  )
}

function sideTitle(side: Side, index: number, count: number): string {
  if (count === 1) return 'One number, and its reports differ on what belongs to it'
  if (index === 0) return 'One side: likelier by what is on file'
  return side.disputes ? 'Another side' : 'Reported as well'
}
