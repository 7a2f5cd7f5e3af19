import { readableFinding } from '@/lib/catalogue/findings/readableFinding'
import { dangerSentence } from '@/lib/core/guard'
import type { PressureUnit } from '@/lib/core/pressure'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { neverFittedIn } from '@/lib/records/neverFitted'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { whatWords } from '../../foundFitted/fittedWords'
import { foundFittedHref } from '../../foundFitted/foundFittedAddress'
import { Facts } from '../../ui/paper/Facts'
import { Picture } from '../../ui/photo/Picture'
import { showsWords } from '../../ui/photo/photoWords'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { sayDate } from '../../ui/words/sayDate'
import { stopAfter } from '../../ui/words/stopAfter'
import { WarrantyOfRepair } from '../../warranty/WarrantyAnswers'
import { endingFacts } from '../end/endingFacts'
import { saidHow } from '../end/endingWords'
import { missingThen } from './missingThen'
import { ReadingTold } from './ReadingTold'
import type { Line } from './timeline'
import { checkWords, combustionWords, noticeWords } from './toldWords'

type Props = {
  line: Exclude<Line, { kind: 'findings' }>
  /** Which visit of the case it is, where it is one. */
  number?: number
  file: TeamFile
  ofCase: CaseFile
  names: ReadonlyMap<string, string>
  unit: PressureUnit
}

/** What a record of a case says, in the words of the page. */
export function WhatTold({ line, number, file, ofCase, names, unit }: Props) {
  const position = (id: string | undefined) =>
    id === undefined ? undefined : file.positions.get(file.keptId(id))?.body.name
  switch (line.kind) {
    case 'case': {
      const { complaint, circuit, serialSeen, note } = line.entry.body
      return (
        <p>
          <b>Case opened:</b> {complaint}. About the {circuit}.
          {serialSeen !== undefined && (
            <>
              {' '}
              Serial on the plate that day: <AsPrinted text={serialSeen} />.
            </>
          )}
          {noted(note)}
        </p>
      )
    }
    case 'visit': {
      const { on, licence, weather, note } = line.entry.body
      return (
        <p>
          <b>
            Visit {number}, {sayDate(on)}
          </b>
          {licence !== undefined && `, licence ${licence}`}
          {weather !== undefined && `, weather: ${weather}`}.{noted(note)}
        </p>
      )
    }
    case 'reading':
      return <ReadingTold judged={line.judged} {...{ file, names, unit }} />
    case 'combustion test':
      return (
        <p>
          <b>CO, {line.entry.body.when}:</b> {combustionWords(line.entry.body)}
          {noted(line.entry.body.note)}
        </p>
      )
    case 'danger answer': {
      const { dangers, done, note } = line.entry.body
      return (
        <p>
          <b>Danger:</b> {dangers.map((code) => dangerSentence[code]).join(' ')} Done at once:{' '}
          {done.join(', ')}.{noted(note)}
        </p>
      )
    }
    case 'found fitted': {
      const { what, printed, fittedWhen, fittedBy, positionId, note } = line.entry.body
      return (
        <p>
          <b>Found fitted:</b> {whatWords[what][0]}
          {positionId !== undefined && `, ${position(positionId)}`}, printed <AsPrinted text={printed} />.
          Fitted {fittedWhen}, by {fittedBy}.{noted(note)}
        </p>
      )
    }
    case 'fitted part': {
      const { printed, positionId, note } = line.entry.body
      return (
        <p>
          <b>Part number on the switch</b>, {position(positionId)}: <AsPrinted text={printed} />.{noted(note)}
        </p>
      )
    }
    case 'switch check':
      return (
        <p>
          <b>
            Switch, {line.entry.body.what}, {position(line.entry.body.positionId)}:
          </b>{' '}
          {checkWords(line.entry.body, unit)}
          {noted(line.entry.body.note)}
        </p>
      )
    case 'repair': {
      const { done, positionId, fittedPart, partFrom, parts, minutes, note } = line.entry.body
      // The part as it was named that day: a record that it was joined to later names another number.
      const part = fittedPart === undefined ? undefined : file.parts.get(fittedPart)?.body
      const never = neverFittedIn(line.entry.body)
      return (
        <>
          <p>
            <b>{never === undefined ? 'Repair:' : 'Said to be a repair, and counted as none:'}</b> {done}
            {positionId !== undefined && `, ${position(positionId)}`}.
            {part !== undefined && (
              <>
                {' '}
                Factory part <AsPrinted text={part.partNumber} />, listed in {part.listedIn}.{' '}
                {partFrom === undefined
                  ? 'Where it came from is not on record.'
                  : `It came from: ${partFrom}.`}
              </>
            )}
            {parts !== undefined && ` ${never === undefined ? 'Parts' : 'Typed under parts'}: ${parts}.`}
            {minutes !== undefined && ` ${minutes} min.`}
            {noted(note)}
          </p>
          {never !== undefined && (
            <p>
              <b>It speaks of: {never.what}.</b> That is never fitted. Is it in?{' '}
              <a href={foundFittedHref({ positionId, furnaceId: ofCase.furnace.id })}>
                Record it as found fitted
              </a>
            </p>
          )}
          <WarrantyOfRepair repair={line.entry} back={`/case/history?id=${ofCase.entry.id}`} />
        </>
      )
    }
    case 'baseline': {
      const { readingId, occasion, note } = line.entry.body
      const typed = file.readings.get(readingId)?.body.asTyped ?? ''
      return (
        <p>
          <b>Baseline</b>, {occasion}: <a href={`/record?id=${readingId}`}>{typed}</a>
          {stopAfter(typed)}
          {noted(note)}
        </p>
      )
    }
    case 'ending': {
      const { entry } = line
      const missing = entry.withdrawn === undefined ? missingThen(file, ofCase, entry) : []
      return (
        <>
          <p>
            <b>Visit ended: {saidHow(entry.body.how, missing.length === 0)}</b>
            {missing.length > 0 && '. It lacked:'}
          </p>
          {missing.length > 0 && (
            <ul>
              {missing.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          )}
          <Facts facts={endingFacts(entry.body, file)} />
        </>
      )
    }
    case 'shut-down notice':
      return (
        <p>
          <b>
            <a href={`/notice?id=${line.entry.id}`}>Left off</a>:
          </b>{' '}
          {noticeWords(line.entry.body)}
          {noted(line.entry.body.note)}
        </p>
      )
    case 'photo': {
      const { entry } = line
      const { shows, caption, findingId, note } = entry.body
      const finding = findingId === undefined ? undefined : file.findings.get(findingId)?.body.finding
      return (
        <>
          <p>
            <b>Photo, {showsWords[shows].toLowerCase()}</b>
            {caption !== undefined && `: ${caption}`}
            {finding !== undefined && `. It shows: ${readableFinding(finding)?.name ?? finding}`}.
            {noted(note)}
          </p>
          <a href={`/photo?id=${entry.id}`}>
            <Picture {...entry.body} alt={caption ?? showsWords[shows]} size="small" />
          </a>
        </>
      )
    }
    case 'lifting': {
      const { noticeId, because, licence } = line.entry.body
      return (
        <p>
          <b>
            <a href={`/notice?id=${noticeId}`}>Notice lifted</a>:
          </b>{' '}
          {because}
          {licence !== undefined && `, licence ${licence}`}.
        </p>
      )
    }
  }
}

const noted = (note: string | undefined) => (note === undefined ? null : ` Note: ${note}`)
