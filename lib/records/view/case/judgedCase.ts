import { usualReadingSettings } from '@/lib/core/reading'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { ratingForComparison } from '../ratingForComparison'
import { ratingAt, ratingSettings } from '../setpoint'
import type { CaseFile } from './caseFile'
import { furnaceOfCase } from './furnaceSeen'
import { type JudgedReading, judgeReading, ratingThen } from './judgedReading'

/** The readings of a case held against what is known of their ratings today. */
export function judgedNow(file: TeamFile, ofCase: CaseFile, now: string): JudgedReading[] {
  const settings = ratingSettings(file, now)
  const furnace = furnaceOfCase(ofCase)
  return ofCase.readings.map((entry) => {
    const position = positionOf(file, entry)
    const rating = position && ratingAt(file, position, furnace, settings)
    const onFile =
      rating !== undefined &&
      [rating.closes, rating.opens, rating.unstated].some(({ level }) => level !== 'Not on file')
    return judgeReading(
      file,
      entry,
      onFile && position !== undefined ? ratingForComparison(rating, position.body) : undefined,
      usualReadingSettings,
    )
  })
}

/** The readings of a case held against what stood on the day they were taken: what an auditor asks for. */
export const judgedThen = (file: TeamFile, { readings }: CaseFile): JudgedReading[] =>
  readings.map((entry) =>
    judgeReading(
      file,
      entry,
      ratingThen(entry.body, positionOf(file, entry)?.body),
      usualReadingSettings,
      entry.at,
    ),
  )

/** The switch position that a reading was taken at, joined positions followed. */
const positionOf = (file: TeamFile, { body }: Entry<ReadingBody>): Entry<PositionBody> | undefined =>
  body.positionId === undefined ? undefined : file.positions.get(file.keptId(body.positionId))
