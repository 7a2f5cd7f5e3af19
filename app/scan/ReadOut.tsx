'use client'

import type { FindIndex, Match } from '@/lib/core/find'
import type { RatingSettings } from '@/lib/core/rating'
import type { ReadCode } from '@/lib/device/readers/codes'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FindEntry } from '@/lib/records/view/findEntries'
import { furnaceWords } from '../equipment/candidates'
import { FindResult } from '../find/FindResult'
import findStyles from '../find/find.module.css'
import { TagLinks } from '../tags/TagLinks'
import { ButtonLink } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { Quiet } from '../ui/words/Quiet'
import { formatWords, shownText } from './codeWords'
import { lookUpCode } from './lookUpCode'
import { answering, type ScanAddress } from './scanAddress'

type Props = {
  code: ReadCode
  address: ScanAddress
  file: TeamFile
  settings: RatingSettings
  index: FindIndex
  entryOf: ReadonlyMap<string, FindEntry>
}

/** One code: what it says, letter for letter, and what of it is on file. Nothing is recorded here. */
export function ReadOut({ code, address, file, settings, index, entryOf }: Props) {
  const found = lookUpCode(file, index, code.text)
  return (
    <Sheet title="Read" sub={formatWords(code.format)}>
      <Stack>
        <p>
          <AsPrinted text={shownText(code.text)} />
        </p>
        {found.is === 'tag' ? (
          <TagLinks {...{ ...found, address, file }} />
        ) : (
          <>
            {found.misread !== undefined && <p>If this is a furnace tag: {found.misread}</p>}
            {found.same.length > 0 && <p>On file:</p>}
            {found.same.length === 0 && found.near.length > 0 && (
              <p>Not on file as read. The nearest, each of them something else:</p>
            )}
            {found.same.length + found.near.length === 0 && <p>Nothing on file is like it.</p>}
            <Found matches={[...found.same, ...found.near]} {...{ file, settings, entryOf }} />
            <Row>
              <Take text={code.text} same={found.same} {...{ address, file, entryOf }} />
              <ButtonLink kind="quiet" href={`/?q=${encodeURIComponent(code.text.slice(0, longestLookUp))}`}>
                Look for it in Find
              </ButtonLink>
            </Row>
            {found.same.length === 0 && (
              <Quiet>
                A code may hold more than the number that is printed, or another number. If so, type the
                printed one.
              </Quiet>
            )}
          </>
        )}
      </Stack>
    </Sheet>
  )
}

const longestLookUp = 100

type FoundProps = Pick<Props, 'file' | 'settings' | 'entryOf'> & { matches: readonly Match[] }

function Found({ matches, file, settings, entryOf }: FoundProps) {
  if (matches.length === 0) return null
  return (
    <ul className={findStyles.results} aria-label="On file">
      {matches.map((match) => (
        <li key={match.key}>
          <FindResult entry={entryOf.get(match.key)!} {...{ match, file, settings }} />
        </li>
      ))}
    </ul>
  )
}

/** A part number is one line of at most this many characters; see lib/records/kinds/part. */
const longestPartNumber = 60

type TakeProps = Pick<Props, 'address' | 'file' | 'entryOf'> & { text: string; same: readonly Match[] }

/** For the form that is waiting: the furnace or the number that it wanted. */
function Take({ text, same, address: { back }, file, entryOf }: TakeProps) {
  if (back === undefined) return null
  if (back.wants === 'part') {
    const number = text.trim()
    return number.length > longestPartNumber || /\p{Cc}/u.test(number) ? (
      <p>This is too long for a part number. Type the printed one, and take that.</p>
    ) : (
      <ButtonLink kind="main" href={answering(back.to, 'read', number)}>
        Take it as the part number
      </ButtonLink>
    )
  }
  const furnaces = same.flatMap(({ key }) => {
    const target = entryOf.get(key)?.target
    const furnace = target?.kind === 'furnace' ? file.furnaces.get(target.id) : undefined
    return furnace === undefined ? [] : [furnace]
  })
  return furnaces.map((furnace) => (
    <ButtonLink key={furnace.id} kind="main" href={answering(back.to, 'on', furnace.id)}>
      Take {furnaceWords(furnace)}
    </ButtonLink>
  ))
}
