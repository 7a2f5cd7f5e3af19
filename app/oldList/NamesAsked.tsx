'use client'

import { useState } from 'react'
import { switchKindEntries } from '@/lib/catalogue/switchKinds'
import { switchKinds } from '@/lib/core/vocabulary'
import type { Answers, Asked, NameAnswer, PositionAnswer } from '@/lib/records/oldList'
import { useDeviceState } from '../device/deviceContext'
import { rangeWords } from '../equipment/candidates'
import { Button } from '../ui/form/Button'
import type { Option } from '../ui/form/option'
import { Select } from '../ui/form/Select'
import { Sheet } from '../ui/paper/Sheet'
import { Row, SideBySide, Stack } from '../ui/paper/Stack'
import type { Import } from './useImport'
import { rowsWords } from './verdictWords'

/** How many names are asked at once: the others come when these are answered. */
const askedAtOnce = 24

/** Step 3: names that are not on file. Nothing is added unless it is said here; a misspelt one is asked about. */
export function NamesAsked({ work }: { work: Import }) {
  const { file } = useDeviceState()
  const { asked, choices, changeChoices } = work
  const { answers } = choices
  const answer = (part: Partial<Answers>) => changeChoices({ answers: { ...answers, ...part } })
  const given = Object.keys(answers.makers).length + Object.keys(answers.ranges).length
  const givenAll = given + Object.keys(answers.positions).length
  const open = asked === undefined ? 0 : asked.maker.length + asked.range.length + asked.position.length
  if (asked === undefined || (open === 0 && givenAll === 0)) return null
  return (
    <Sheet
      title="3. Names that are not on file"
      sub={
        open === 0
          ? 'Every name has its answer.'
          : 'Rows wait for your answer. Without one they are left out, and nothing is added.'
      }
      foot={
        givenAll > 0 && (
          <Button
            kind="quiet"
            onClick={() => changeChoices({ answers: { makers: {}, ranges: {}, positions: {} } })}
          >
            Take back all {givenAll} answers
          </Button>
        )
      }
    >
      <Stack>
        <Names
          what="maker"
          asked={asked.maker}
          wordsOf={(id) => file.makers.get(id)?.body.name ?? id}
          give={(given) => answer({ makers: { ...answers.makers, ...given } })}
        />
        <Names
          what="range"
          asked={asked.range}
          wordsOf={(id) => {
            const range = file.ranges.get(id)
            return range === undefined ? id : rangeWords(file, range)
          }}
          give={(given) => answer({ ranges: { ...answers.ranges, ...given } })}
        />
        <Positions
          asked={asked.position}
          give={(given) => answer({ positions: { ...answers.positions, ...given } })}
        />
      </Stack>
    </Sheet>
  )
}

type NamesProps = {
  what: 'maker' | 'range'
  asked: readonly Asked[]
  wordsOf: (id: string) => string
  give: (answers: Record<string, NameAnswer>) => void
}

function Names({ what, asked, wordsOf, give }: NamesProps) {
  if (asked.length === 0) return null
  const all = (answer: NameAnswer) => give(Object.fromEntries(asked.map(({ key }) => [key, answer])))
  return (
    <section aria-label={what === 'maker' ? 'Makers' : 'Furnace ranges'}>
      <Stack>
        <SideBySide>
          {asked.slice(0, askedAtOnce).map((one) => (
            <NameAsked key={one.key} {...{ one, what, wordsOf, give }} />
          ))}
        </SideBySide>
        {asked.length > 1 && (
          <Row>
            <Button onClick={() => all('add')}>
              Add all {asked.length} {what}s that are left
            </Button>
            <Button kind="quiet" onClick={() => all('leave out')}>
              Leave the rows of all of them out
            </Button>
          </Row>
        )}
      </Stack>
    </section>
  )
}

function NameAsked({ one, what, wordsOf, give }: Omit<NamesProps, 'asked'> & { one: Asked }) {
  // Looked for once for each name that is shown: it is a search through all that is on file.
  const [near] = useState(() => one.near())
  const options: Option[] = [
    ...near.map((id) => ({ value: id, words: `It is ${wordsOf(id)}` })),
    { value: 'add', words: `Add it as a new ${what}` },
    { value: 'leave out', words: 'Leave its rows out' },
  ]
  return (
    <Select
      label={`${what === 'maker' ? 'Maker' : 'Range'} “${one.name}”${one.maker === undefined ? '' : ` of ${one.maker}`}`}
      name={`${what} ${one.key}`}
      hint={
        near.length > 0
          ? `${rowsWords(one.rows)}. A name near it is on file: is it misspelt?`
          : rowsWords(one.rows)
      }
      none="Choose"
      options={options}
      value=""
      onChange={({ target: { value } }) => {
        if (value !== '')
          give({ [one.key]: value === 'add' || value === 'leave out' ? value : { use: value } })
      }}
    />
  )
}

type PositionsProps = {
  asked: readonly Asked[]
  give: (answers: Record<string, PositionAnswer>) => void
}

function Positions({ asked, give }: PositionsProps) {
  if (asked.length === 0) return null
  return (
    <section aria-label="Switch positions">
      <SideBySide>
        {asked.slice(0, askedAtOnce).map((one) => (
          <Select
            key={one.key}
            label={`Position “${one.name}”`}
            name={`position ${one.key}`}
            hint={`${rowsWords(one.rows)}, in every range that lacks it. Which kind of switch is it?`}
            none="Choose"
            options={[
              ...one.near().map((name) => ({ value: `as ${name}`, words: `It is ${name}` })),
              ...switchKinds.map((kind) => ({
                value: `kind ${kind}`,
                words: `Add it: ${switchKindEntries[kind].words.toLowerCase()}`,
              })),
              { value: 'leave out', words: 'Leave its rows out' },
            ]}
            value=""
            onChange={({ target: { value } }) => {
              const kind = switchKinds.find((each) => value === `kind ${each}`)
              if (kind !== undefined) give({ [one.key]: { kind } })
              else if (value.startsWith('as ')) give({ [one.key]: { as: value.slice('as '.length) } })
              else if (value === 'leave out') give({ [one.key]: 'leave out' })
            }}
          />
        ))}
      </SideBySide>
    </section>
  )
}
