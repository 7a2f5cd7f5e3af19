import type { Answer } from '@/lib/records/answer'
import { idOf, type Sender } from './judge'
import type { Log } from './openLog'

export type Imported = {
  stored: number
  alreadyStored: number
  /** Lines that are not in the log, and why. Line numbers count from 1. */
  leftOut: { line: number; id: string; sentence: string }[]
}

export type ImportOptions = {
  /** The people whose records these are, by id; undefined when there is no such person. */
  senderOf(author: string): Sender | undefined
  now: () => Date
}

type Line = { number: number; author: string; record: unknown }

/** Records of one author in a row go in one batch, up to so many. */
const batchSize = 500

/**
 * Adds records from a file, one JSON object a line, through the same door as everybody's: the same rules hold, and
 * reading the same file twice changes nothing. Their order is kept, since records refer to earlier ones.
 *
 * @example await importRecords(log, readFileSync(file, 'utf8').split('\n'), { senderOf, now })
 */
export async function importRecords(
  log: Pick<Log, 'appendRecords'>,
  lines: Iterable<string> | AsyncIterable<string>,
  { senderOf, now }: ImportOptions,
): Promise<Imported> {
  const imported: Imported = { stored: 0, alreadyStored: 0, leftOut: [] }
  let waiting: Line[] = []

  const send = async (): Promise<void> => {
    const batch = waiting
    const author = batch[0]?.author
    if (author === undefined) return
    waiting = []
    const sender = senderOf(author)
    if (sender === undefined) {
      const sentence = `Nobody here has the id “${author}”.`
      imported.leftOut.push(
        ...batch.map(({ number, record }) => ({ line: number, id: idOf(record), sentence })),
      )
      return
    }
    const records = batch.map(({ record }) => record)
    const answers = await log.appendRecords({ sentAt: now().toISOString(), records }, sender)
    for (const [at, answer] of answers.entries()) count(imported, batch[at]!.number, answer)
  }

  let number = 0
  for await (const text of lines) {
    number += 1
    if (text.trim() === '') continue
    const line = readLine(text, number)
    if (line === undefined) {
      imported.leftOut.push({
        line: number,
        id: '',
        sentence: 'This line is not a JSON object with an author.',
      })
      continue
    }
    if (waiting.length === batchSize || (waiting[0] !== undefined && waiting[0].author !== line.author)) {
      await send()
    }
    waiting.push(line)
  }
  await send()
  imported.leftOut.sort((a, b) => a.line - b.line)
  return imported
}

function count(imported: Imported, line: number, answer: Answer): void {
  if (answer.outcome === 'stored') imported.stored += 1
  else if (answer.outcome === 'already stored') imported.alreadyStored += 1
  else if (answer.outcome === 'refused')
    imported.leftOut.push({ line, id: answer.id, sentence: answer.sentence })
  else {
    const sentence = `It refers to records that are not in the log: ${answer.ids.join(', ')}.`
    imported.leftOut.push({ line, id: answer.id, sentence })
  }
}

function readLine(text: string, number: number): Line | undefined {
  try {
    const record: unknown = JSON.parse(text)
    const author =
      typeof record === 'object' && record !== null && 'author' in record ? record.author : undefined
    return typeof author === 'string' ? { number, author, record } : undefined
  } catch (cause) {
    if (cause instanceof SyntaxError) return undefined
    throw cause
  }
}
