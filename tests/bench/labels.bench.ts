import { confidenceLimit } from '@/lib/core/label'
import { type LabelPicture, labelPictures } from '../setup/labelPictures'
import { openReaderHere, readMade, saysNothingElse, saysWhatIsStated } from '../setup/readLabelPicture'
import { median, quantile } from './measure'

export const name = 'labels'

/**
 * The set that is measured has a seed of its own, that nothing was ever tuned on. Whoever tunes takes another, which
 * also tells picture by picture what was read: `LABELS_SEED=7 npm run bench -- labels`.
 */
const measuredSeed = 20_260_131
const pictureCount = 72

/**
 * How well labels are read on made pictures of invented labels, by the same preparation, recognition and parser as on a
 * phone. Drawn letters are cleaner than stamped or worn ones: real labels will be read worse.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const seed = Number(process.env.LABELS_SEED ?? measuredSeed)
  const tuning = seed !== measuredSeed
  const pictures = await labelPictures(seed, pictureCount)
  // Seven of ten are on file, among others, as with a team's own.
  const onFile = [...pictures.filter((_, at) => at % 10 < 7).map(({ partNumber }) => partNumber), ...others]
  const reader = await openReaderHere()
  const results = []
  try {
    for (const picture of pictures) {
      const started = performance.now()
      const reading = await readMade(reader, picture, onFile)
      const seconds = (performance.now() - started) / 1000
      results.push({ picture, reading, seconds })
      if (tuning) explain(print, picture, reading)
    }
  } finally {
    await reader.close()
  }

  const rated = results.filter(({ picture }) => !picture.pointLost)
  const share = (count: number, of: number) => `${count} of ${of} (${((100 * count) / of).toFixed(0)} %)`
  const offered = results.flatMap(({ picture, reading }) =>
    reading.values.filter((each) => each.offered).map((each) => ({ picture, each })),
  )
  const wrong = offered.filter(({ picture, each }) => !saysNothingElse(each, picture))
  const offeredParts = results.flatMap(({ picture, reading }) =>
    reading.parts.filter((each) => each.offered).map((each) => ({ picture, each })),
  )
  const wrongParts = offeredParts.filter(({ picture, each }) => each.text !== picture.partNumber)
  const right = rated.filter(({ picture, reading }) => {
    const [first] = reading.values
    return first?.offered === true && saysWhatIsStated(first, picture)
  })
  const shown = rated.filter(({ picture, reading }) =>
    reading.values.some((each) => saysWhatIsStated(each, picture)),
  )
  const rightParts = results.filter(({ picture, reading }) => {
    const [first] = reading.parts
    return first?.offered === true && first.text === picture.partNumber
  })
  const lost = results.filter(({ picture }) => picture.pointLost)
  const caught = lost.filter(({ reading }) => reading.values.every((each) => !each.offered))

  print(`${pictures.length} made pictures, seed ${seed}, confidence limit ${confidenceLimit}`)
  print(`whole rating right and offered first: ${share(right.length, rated.length)}`)
  print(`whole rating right, offered or shown as doubtful: ${share(shown.length, rated.length)}`)
  print(`values offered that are wrong: ${share(wrong.length, offered.length)}`)
  print(
    `part number right, letter for letter, and offered first: ${share(rightParts.length, results.length)}`,
  )
  print(`part numbers offered that are wrong: ${share(wrongParts.length, offeredParts.length)}`)
  print(`labels without their decimal point, no value offered: ${share(caught.length, lost.length)}`)
  const seconds = results.map((each) => each.seconds)
  print(
    `seconds a picture: ${median(seconds).toFixed(1)} in the middle, ${quantile(seconds, 0.95).toFixed(1)} for 19 of 20`,
  )
  for (const { picture, each } of wrong)
    print(
      `wrong: “${each.text}” for ${picture.stated.map(({ printed }) => printed).join(', ') || 'none'} (${picture.name})`,
    )
  for (const { picture, each } of wrongParts)
    print(`wrong part: “${each.text}” for “${picture.partNumber}” (${picture.name})`)
}

/** Numbers on file that no picture has. */
const others = ['OM-7710', 'OM-7719', 'T-40-122', '61Q.2219', 'SM 228/31', '1013-802', 'KX00471B']

function explain(
  print: (line: string) => void,
  picture: LabelPicture,
  { values, parts }: Awaited<ReturnType<typeof readMade>>,
): void {
  print(
    `${picture.name}: ${picture.partNumber}, ${picture.stated.map(({ printed }) => printed).join(' / ')} → ` +
      `${values.map(({ text, confidence, offered }) => `${offered ? '' : '?'}“${text}” ${confidence.toFixed(0)}`).join(', ') || 'no value'} · ` +
      `${parts.map(({ text, confidence, offered }) => `${offered ? '' : '?'}“${text}” ${confidence.toFixed(0)}`).join(', ') || 'no part'}`,
  )
}
