'use client'

import { useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { switchKindEntries } from '@/lib/catalogue/switchKinds'
import { counting } from '@/lib/records/fold/teamFile'
import { codeWords } from '@/lib/records/view/coverWords'
import { ratingSettings, setpointOf } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { ForRequest } from '../phoneDesk/ForRequest'
import { answerHref, carrying, requestIn } from '../phoneDesk/requestAddress'
import { bundleLine } from '../setpoint/bundleWords'
import { PartLines } from '../setpoint/PartLines'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { furnaceWords } from './candidates'
import styles from './equipment.module.css'
import { branchName, equipmentOf } from './equipmentBranches'
import { OnFile } from './OnFile'
import { PartLine } from './PartLine'

/** One furnace range: which models it stands for, its switches with their parts, and what to add next. */
export function RangeScreen() {
  const query = useSearchParams()
  const id = query.get('id') ?? ''
  const { file } = useDeviceState()
  const request = requestIn(file, query)
  const [now] = useState(() => new Date().toISOString())
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  const branch = useMemo(
    () => equipmentOf(file).branches.find(({ range }) => range.id === file.keptId(id)),
    [file, id],
  )
  if (branch === undefined) {
    return (
      <Stack>
        <PageHeader above={<a href="/equipment">Equipment</a>} title="Furnace range" />
        <Empty
          what="This furnace range is not on this device"
          why="The address may be cut short, the range was withdrawn, or it has not reached this device."
          todo={<a href="/equipment">See the equipment on file</a>}
        />
      </Stack>
    )
  }
  const { range, positions } = branch
  const { body } = range
  const furnaces = counting(file.furnaces).filter(
    (furnace) => furnace.body.rangeId !== undefined && file.keptId(furnace.body.rangeId) === range.id,
  )
  const addPosition = carrying(`/equipment/add-position?range=${range.id}`, request)
  return (
    <Stack>
      <PageHeader
        above={<a href="/equipment">Equipment</a>}
        title={branchName(branch)}
        actions={
          <ButtonLink kind={positions.length === 0 ? 'main' : 'plain'} href={addPosition}>
            Add a switch position
          </ButtonLink>
        }
      />
      <ForRequest request={request} />
      <Sheet
        title="Which furnaces"
        foot={
          <Row>
            <ButtonLink kind="quiet" href={`/record?id=${range.id}`}>
              The record itself
            </ButtonLink>
            <ButtonLink kind="quiet" href={`/furnace/add?range=${range.id}`}>
              Add a furnace of this range
            </ButtonLink>
          </Row>
        }
      >
        <Facts
          facts={[
            {
              key: 'models',
              name: 'Model numbers and patterns',
              value: <span translate="no">{body.modelPatterns.join(' · ')}</span>,
            },
            { key: 'fuel', name: 'Fuel', value: body.fuel },
            { key: 'heat', name: 'Heat', value: body.heat },
            ...(body.revisions === undefined
              ? []
              : [
                  {
                    key: 'revisions',
                    name: 'Revisions',
                    value: codeWords('revision', body.revisions),
                  },
                ]),
            ...(body.serials === undefined
              ? []
              : [{ key: 'serials', name: 'Serials', value: codeWords('serial', body.serials) }]),
            ...(body.note === undefined ? [] : [{ key: 'note', name: 'Note', value: body.note }]),
          ]}
        />
      </Sheet>
      {positions.length === 0 && (
        <Empty
          what="No switch of this range is on file"
          why="A rating belongs to one switch position, so the position comes first."
          todo={<a href={addPosition}>Add its first switch position</a>}
        />
      )}
      {positions.map(({ position, parts }) => {
        const setpoint = setpointOf(file, position.id, {}, settings)
        const others = parts.filter((part) => part.body.class !== 'factory')
        const sister =
          position.body.sisterId === undefined
            ? undefined
            : file.positions.get(file.keptId(position.body.sisterId))
        return (
          <Sheet
            key={position.id}
            title={position.body.name}
            sub={`${switchKindEntries[position.body.kind].words} · ${bundleLine(position.body)}`}
            foot={
              <Row>
                <ButtonLink href={`/setpoint?position=${position.id}`}>See its setpoint</ButtonLink>
                {request === undefined ? (
                  <ButtonLink href={`/report?position=${position.id}`}>Add a report</ButtonLink>
                ) : (
                  <ButtonLink kind="main" href={answerHref(request, position.id)}>
                    Record the answer
                  </ButtonLink>
                )}
                <ButtonLink href={`/equipment/add-part?position=${position.id}`}>
                  Add a part for it
                </ButtonLink>
              </Row>
            }
          >
            {setpoint !== undefined && (
              <p>
                <OnFile setpoint={setpoint} />
              </p>
            )}
            {sister !== undefined && (
              <p>Its sister is {sister.body.name}. Each has a number of its own; none is carried over.</p>
            )}
            <h3>Factory part</h3>
            <PartLines lines={setpoint?.partLines ?? []} />
            {others.length > 0 && (
              <>
                <h3>Other parts recorded here</h3>
                <ul className={styles.list}>
                  {others.map((part) => (
                    <li key={part.id}>
                      <PartLine part={part} file={file} />
                    </li>
                  ))}
                </ul>
              </>
            )}
          </Sheet>
        )
      })}
      {furnaces.length > 0 && (
        <Sheet title="Furnaces of this range">
          <ul className={styles.list}>
            {furnaces.map((furnace) => (
              <li key={furnace.id}>
                <a href={`/furnace?id=${furnace.id}`}>{furnaceWords(furnace)}</a>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
    </Stack>
  )
}
