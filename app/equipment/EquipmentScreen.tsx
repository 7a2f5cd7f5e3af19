'use client'

import { useSearchParams } from 'next/navigation'
import { useDeferredValue, useMemo, useState } from 'react'
import { buildFindIndex, find } from '@/lib/core/find'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { ForRequest } from '../phoneDesk/ForRequest'
import { carrying, requestIn } from '../phoneDesk/requestAddress'
import { Empty } from '../ui/answers/Empty'
import { Button, ButtonLink } from '../ui/form/Button'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import styles from './equipment.module.css'
import { branchTexts, equipmentOf } from './equipmentBranches'
import { fitsBelow } from './modelPatterns'
import { PartLine } from './PartLine'
import { RangeSheet } from './RangeSheet'

/** How many ranges are drawn at a time, and how many a search lists. */
const step = 20

/** The makers, furnace ranges, switch positions and parts that the team has recorded, and what is on file of each. */
export function EquipmentScreen() {
  const query = useSearchParams()
  const model = query.get('model')?.trim() ?? ''
  const { file, me } = useDeviceState()
  const request = requestIn(file, query)
  const [typed, setTyped] = useState(model)
  const [shownCount, setShownCount] = useState(step)
  const [now] = useState(() => new Date().toISOString())
  const looked = useDeferredValue(typed).trim()
  const { branches, makersWithoutRange, looseParts } = useMemo(() => equipmentOf(file), [file])
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  const index = useMemo(
    () =>
      buildFindIndex([
        ...branches.map((branch) => ({ key: branch.range.id, texts: branchTexts(branch) })),
        ...looseParts.map((part) => ({ key: part.id, texts: [part.body.partNumber] })),
        ...makersWithoutRange.map((maker) => ({ key: maker.id, texts: [maker.body.name] })),
      ]),
    [branches, looseParts, makersWithoutRange],
  )
  const matches = looked === '' ? undefined : find(index, looked, step)
  const found = matches?.map(({ key }) => key)
  const pick = <Each,>(all: readonly Each[], idOf: (each: Each) => string): Each[] =>
    found === undefined ? [...all] : found.flatMap((id) => all.find((each) => idOf(each) === id) ?? [])
  const ranges = pick(branches, ({ range }) => range.id)
  const parts = pick(looseParts, ({ id }) => id)
  const makers = pick(makersWithoutRange, ({ id }) => id)
  const nothing = ranges.length + parts.length + makers.length === 0
  const addRange = carrying(
    `/equipment/add-range${looked === '' ? '' : `?${new URLSearchParams({ model: looked })}`}`,
    request,
  )

  return (
    <Stack>
      <PageHeader
        title="Equipment"
        lead="Makers, furnace ranges, the switches in them, and the parts listed for each."
      />
      <ForRequest request={request} />
      <nav aria-label="Add to the equipment">
        <Row>
          <ButtonLink href={addRange}>Add a furnace range</ButtonLink>
          <ButtonLink href="/equipment/add-part">Add a part</ButtonLink>
          <ButtonLink href="/furnace/add">Add a furnace</ButtonLink>
          <ButtonLink kind="quiet" href="/equipment/add-maker">
            Add a maker
          </ButtonLink>
          {me.role === 'manager' && (
            <ButtonLink kind="quiet" href="/tags">
              Print furnace tags
            </ButtonLink>
          )}
          <ButtonLink kind="quiet" href="/equipment/superseded">
            A part is superseded
          </ButtonLink>
          <ButtonLink kind="quiet" href="/equipment/join">
            Join duplicates
          </ButtonLink>
        </Row>
      </nav>
      <TextField
        exact
        label="Model, maker, range, switch or part number"
        name="look"
        type="search"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      <p role="status">{found !== undefined && !nothing && `${found.length} found`}</p>
      {matches !== undefined && !nothing && !matches.some(({ score }) => score < fitsBelow) && (
        <p>
          None of them is “{looked}” itself: they only hold it, or look like it. Not here?{' '}
          <a href={addRange}>Add its furnace range</a>
        </p>
      )}
      {nothing && looked !== '' && (
        <Empty
          what={`Nothing on file matches “${looked}”`}
          why="Neither as a model, maker, range or switch nor as a part number."
          todo={<a href={addRange}>Add the furnace range, then its switches</a>}
        />
      )}
      {nothing && looked === '' && (
        <Empty
          what="No equipment on file yet"
          why="Inchwater knows only what your team records."
          todo={
            <ol>
              <li>
                <a href="/equipment/add-maker">Add a maker</a>
              </li>
              <li>
                <a href="/equipment/add-range">Add one of its furnace ranges</a>
              </li>
              <li>Add the switches of that range, and the parts that the maker lists for them.</li>
            </ol>
          }
        />
      )}
      {ranges.slice(0, shownCount).map((branch) => (
        <RangeSheet key={branch.range.id} {...{ branch, file, settings, request }} />
      ))}
      {ranges.length > shownCount && (
        <Button onClick={() => setShownCount(shownCount + step)}>
          Show more of the {ranges.length} ranges
        </Button>
      )}
      {makers.length > 0 && (
        <Sheet title="Makers without a range">
          <ul className={styles.list}>
            {makers.map((maker) => (
              <li key={maker.id}>
                {maker.body.name}.{' '}
                <a href={`/equipment/add-range?maker=${maker.id}`}>
                  Add a furnace range of {maker.body.name}
                </a>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      {parts.length > 0 && (
        <Sheet title="Parts of no recorded switch">
          <ul className={styles.list}>
            {parts.map((part) => (
              <li key={part.id}>
                <PartLine part={part} file={file} />
              </li>
            ))}
          </ul>
        </Sheet>
      )}
    </Stack>
  )
}
