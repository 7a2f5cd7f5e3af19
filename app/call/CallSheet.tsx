'use client'

import { stageWords } from '@/lib/catalogue/switchKinds'
import { feetOf } from '@/lib/catalogue/units'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { Question } from '@/lib/records/view/desk/questions'
import { partsByPosition } from '@/lib/records/view/findEntries'
import { useDeviceState } from '../device/deviceContext'
import { callLine } from '../phoneDesk/callWords'
import { PromiseLine } from '../phoneDesk/PromiseLine'
import { questionTitle } from '../phoneDesk/questionWords'
import { carrying } from '../phoneDesk/requestAddress'
import { type Fact, Facts } from '../ui/paper/Facts'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayCode } from './readOut'

/** What to ask, in the order in which a counter can answer it. Common practice, no published source. */
const asks = [
  'Which switch part number is current for this serial, at this elevation? Does it take an elevation kit?',
  'Does it replace an older number? Did the setting change with it?',
  'Where does it close, where does it open, and with which tolerance? In which unit? Which number is which?',
  'From the port to the room, or across two ports?',
  'For which stage?',
  'What should it read running, cold and hot?',
  'Is there a bulletin on nuisance trips, a hose orifice, the drain, a restrictor?',
  'Where is that printed? Can you e-mail the page?',
  'Your first name and department, and a reference for this call?',
] as const

/** What to have ready and what to ask, in spoken order, for one question. */
export function CallSheet({ question, now }: { question: Question; now: string }) {
  const { file, names } = useDeviceState()
  const { lead, position, calls } = question
  return (
    <Sheet title={`Say and ask: ${questionTitle(file, question)}`}>
      <Stack>
        <Facts facts={readyFacts(file, question)} />
        {calls.map((call) => (
          <p key={call.id}>{callLine(file, names, call)}</p>
        ))}
        <PromiseLine question={question} now={now} />
        <Fold summary="Ask, in this order" open>
          {() => (
            <ol>
              {asks.map((ask) => (
                <li key={ask}>{ask}</li>
              ))}
            </ol>
          )}
        </Fold>
        {position === undefined && (
          <p>
            Its switch is not on file, so a number has no place yet.{' '}
            <a href={carrying(`/equipment?${new URLSearchParams({ model: lead.body.model ?? '' })}`, lead)}>
              Add the range and its switch
            </a>
            ; what you type here is kept meanwhile.
          </p>
        )}
      </Stack>
    </Sheet>
  )
}

function readyFacts(
  file: TeamFile,
  { lead, requests, alsoAsked, position, range, furnaces }: Question,
): Fact[] {
  const said = [lead, ...requests, ...alsoAsked].map(({ body }) => body)
  const first = <Key extends 'model' | 'serial' | 'printed'>(key: Key) =>
    said.map((body) => body[key]).find((text) => text !== undefined)
  const furnace = furnaces[0]?.body
  const code = (text: string) => (
    <>
      <AsPrinted text={text} /> {sayCode(text)}
    </>
  )
  const fact = (
    key: string,
    name: string,
    value: string | undefined,
    show: (text: string) => Fact['value'],
  ) => (value === undefined || value === '' ? [] : [{ key, name, value: show(value) }])
  const parts =
    position === undefined
      ? []
      : (partsByPosition(file).get(position.id) ?? []).filter(({ body }) => body.class === 'factory')
  const plain = (text: string) => text
  return [
    ...fact('model', 'Model', first('model') ?? furnace?.model, code),
    ...fact('serial', 'Serial', first('serial') ?? furnace?.serial, code),
    ...fact('range', 'Range and size', range?.body.name, plain),
    ...fact('fuel', 'Fuel', furnace?.fuel ?? range?.body.fuel, plain),
    ...fact('switch', 'Switch', position?.body.name ?? lead.body.positionName, plain),
    ...fact('stage', 'Stage', position && stageWords[position.body.stage], plain),
    ...fact(
      'elevation',
      'Elevation',
      furnace?.elevationMetres === undefined
        ? undefined
        : `${Math.round(feetOf(furnace.elevationMetres)).toLocaleString('en')} ft`,
      plain,
    ),
    ...fact('printed', 'Printed on the switch', first('printed'), (text) => <AsPrinted text={text} />),
    ...fact('parts', 'Part numbers on file', parts.map(({ body }) => body.partNumber).join(', '), plain),
  ]
}
