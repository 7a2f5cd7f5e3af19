'use client'

import { useState } from 'react'
import type { FurnaceForRating } from '@/lib/core/rating'
import type { Entry } from '@/lib/records/fold/entry'
import { counting } from '@/lib/records/fold/teamFile'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { ReportBody } from '@/lib/records/kinds/report'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { BundleFields, OpenFields } from '../report/ReportFields'
import type { ReportForm } from '../report/reportForm'
import { readText } from '../report/reportForm'
import { VerdictList } from '../report/VerdictList'
import type { Verdict } from '../report/verdicts'
import { WhatItSays } from '../report/WhatItSays'
import { Problem } from '../ui/answers/Problem'
import { Refusal } from '../ui/answers/Refusal'
import { Button } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { Choice } from '../ui/form/Choice'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import { Beside } from '../ui/paper/Beside'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { WaterColumn } from '../ui/waterColumn/WaterColumn'
import type { DatedLevel } from '../ui/words/LevelWord'
import { type AnswerForm, agreesTwice, isGeneralPurpose, isTyped } from './callForm'
import { sayBundle } from './readOut'

/** What a number of the call amounts to at this moment. */
export type AnswerState = {
  answer: AnswerForm
  /** What the answer would record, as far as it can be told; empty while the number itself is open. */
  bodies: readonly ReportBody[]
  levels: readonly DatedLevel['level'][]
  verdicts: readonly Verdict[]
  /** Questions of the form that are still open. */
  open: ReadonlyMap<keyof ReportForm, string>
}

type Props = {
  state: AnswerState
  position: Entry<PositionBody>
  furnace: FurnaceForRating
  /** Whom it is read back to. */
  rungName: string
  now: string
  asked: boolean
  change: (part: Partial<AnswerForm>) => void
  remove: (() => void) | undefined
}

/** One number of a call: typed while listening, typed once more unseen, and read back digit by digit. */
export function AnswerFields({ state, position, furnace, rungName, now, asked, change, remove }: Props) {
  const { file } = useDeviceState()
  const { unit } = usePreference()
  const [blind, setBlind] = useState(false)
  const { answer, bodies, levels, verdicts, open } = state
  const { report } = answer
  const read = readText(report)
  const typed = isTyped(answer)
  const twice = agreesTwice(answer)
  const refused = typed && isGeneralPurpose(file, answer)
  const changeReport = (part: Partial<ReportForm>) =>
    change({
      report: { ...report, ...(part.asWritten === undefined ? {} : { confirmed: false }), ...part },
      ...(part.asWritten === undefined ? {} : { again: '' }),
      readBack: false,
    })
  const errorOf = (field: keyof ReportForm) => (asked && typed ? open.get(field) : undefined)
  const asks = new Set<keyof ReportForm>([
    ...open.keys(),
    ...(['unit', 'action', 'sense'] as const).filter((field) => report[field] !== ''),
    ...(report.confirmed ? (['confirmed'] as const) : []),
  ])
  const oldParts = counting(file.parts).filter(({ body }) =>
    body.positionIds.some((id) => file.keptId(id) === position.id),
  )
  return (
    <Sheet heading={3} title={`Number for ${position.body.name}`}>
      <Stack>
        {blind ? (
          <Row>
            <p>The first is hidden while you type it once more.</p>
            <Button kind="quiet" onClick={() => setBlind(false)}>
              Show it and change it
            </Button>
          </Row>
        ) : (
          <TextField
            exact
            name={`asWritten-${answer.key}`}
            label="Value and unit, as spoken"
            hint="For instance: closes at minus .62 in wc, plus or minus .05"
            value={report.asWritten}
            onChange={(event) => changeReport({ asWritten: event.target.value })}
            error={typed && !read.ok ? read.problem.message : undefined}
          />
        )}
        {refused && <RefusedPart />}
        {read.ok && typed && !blind && (
          <Beside
            picture={
              <WaterColumn
                unit={unit}
                sense={bodies[0]?.sense ?? position.body.sense}
                marks={bodies.map((body, index) => ({
                  ...body,
                  standing: { level: levels[index] ?? 'Unverified', asOf: now },
                  onceSaved: true,
                }))}
              />
            }
          >
            <WhatItSays
              values={read.value}
              answered={bodies.length > 0 ? bodies : read.value.map(() => answeredIn(report))}
              unit={unit}
              kind={position.body.kind}
              levelOf={(index) => levels[index] ?? 'Unverified'}
            />
          </Beside>
        )}
        <OpenFields
          group={answer.key}
          form={report}
          change={changeReport}
          errorOf={errorOf}
          asks={typed && !blind ? asks : new Set()}
        />
        <div role="status">{!blind && <VerdictList verdicts={verdicts} />}</div>
        {read.ok && typed && (
          <>
            <TextField
              exact
              name={`again-${answer.key}`}
              label="Once more, as they repeat it"
              hint="Typed without looking at the first. A number that is heard twice is seldom misheard."
              value={answer.again}
              autoComplete="off"
              onFocus={() => setBlind(!twice)}
              onBlur={() => setBlind(false)}
              onChange={(event) => change({ again: event.target.value, readBack: false })}
            />
            {!blind && answer.again.trim() !== '' && !twice && (
              <Problem>The two are not the same number. Ask for it again, digit by digit.</Problem>
            )}
          </>
        )}
        {typed && (
          <>
            <TextField
              exact
              name={`partNumber-${answer.key}`}
              label="Part number that is current"
              value={report.partNumber}
              onChange={(event) => changeReport({ partNumber: event.target.value })}
            />
            {report.partNumber.trim() !== '' && oldParts.length > 0 && (
              <Select
                name={`replaces-${answer.key}`}
                label="Does it replace an older number?"
                none="No, or they do not say"
                value={answer.replaces}
                onChange={(event) => change({ replaces: event.target.value })}
                options={oldParts.map(({ id, body }) => ({ value: id, words: body.partNumber }))}
              />
            )}
            {answer.replaces !== '' && (
              <>
                <Choice
                  legend="Did the setting change with it?"
                  name={`setting-${answer.key}`}
                  options={[
                    { value: 'same', words: 'The same' },
                    { value: 'changed', words: 'Changed' },
                    { value: 'not stated', words: 'They do not say' },
                  ]}
                  value={answer.setting === '' ? null : answer.setting}
                  onChoose={(setting) => change({ setting })}
                  error={
                    asked && answer.setting === ''
                      ? 'Say whether the setting changed, or that they do not say.'
                      : undefined
                  }
                />
                <Check
                  name={`kit-${answer.key}`}
                  label="The new number is a kit"
                  checked={answer.kit}
                  onChange={(event) => change({ kit: event.target.checked })}
                />
              </>
            )}
            <TextField
              name={`printedIn-${answer.key}`}
              label="Where is it printed?"
              hint="Document and page, as they say it."
              value={answer.printedIn}
              onChange={(event) => change({ printedIn: event.target.value })}
            />
            <BundleFields
              group={answer.key}
              form={report}
              change={changeReport}
              errorOf={errorOf}
              furnace={furnace}
            />
          </>
        )}
        {twice && !blind && open.size === 0 && (
          <div>
            <h4>Read back</h4>
            {bodies.map((body) => (
              <p key={body.action}>
                “{sayBundle({ ...body, partNumber: report.partNumber.trim() || undefined })}”
              </p>
            ))}
          </div>
        )}
        {read.ok && typed && (
          <Check
            name={`readBack-${answer.key}`}
            label={`Read back to ${rungName || 'them'}, and they said it is right`}
            hint={
              twice && open.size === 0
                ? undefined
                : 'Can be ticked once every question above is answered and the value is typed a second time.'
            }
            disabled={!twice || open.size > 0}
            checked={answer.readBack}
            onChange={(event) => change({ readBack: event.target.checked })}
          />
        )}
        {remove !== undefined && (
          <Row>
            <Button kind="quiet" onClick={remove}>
              Leave this number out
            </Button>
          </Row>
        )}
      </Stack>
    </Sheet>
  )
}

/** What is answered of a number while it is not whole yet. */
const answeredIn = ({ action, sense }: ReportForm) => ({
  action: action === '' ? ('not stated' as const) : action,
  sense: sense === '' ? ('not stated' as const) : sense,
})

/** What to say on the phone when a seller offers a switch that the maker does not name. */
export function RefusedPart() {
  return (
    <Refusal
      title="That is no factory part"
      rule="No adjustable or general-purpose switch, ever"
      why="A switch that is adjustable, or that the maker does not name for this model and serial, was not proven with this furnace’s exchanger, inducer and vent: it can prove air below the safe flow. Its number is no rating either."
      instead={
        <>
          Say: “Thank you, but I can’t use a universal or adjustable switch. Which part number does the maker
          list for this model and serial?” If they have none, record that they offered it.
        </>
      }
    />
  )
}
