import { closeSync, openSync, readSync, statSync } from 'node:fs'
import { StringDecoder } from 'node:string_decoder'
import { failure, type Result, success } from '@/lib/core/result'
import { whatDoesNotFit } from '../log/whatDoesNotFit'
import { type DocumentHead, documentFormat, documentHead, versionsTakenIn } from './logDocument'

/** An exported document as it is read: its head, and its entries one by one, not yet judged. */
export type ReadDocument = { head: DocumentHead; entries: Generator<unknown, void> }

/** What is read from the file at once, in bytes. */
const chunkBytes = 1024 * 1024

/** The longest file that is read as a whole, in bytes: one that another program wrote anew, with other line ends. */
const mostWholeBytes = 64 * 1024 * 1024

/** Thrown by the entries when the file breaks off or is no JSON; the message is a sentence about the entry. */
export class DocumentDamaged extends Error {
  override name = 'DocumentDamaged'
}

/**
 * Opens an exported document. As it was exported it is read line by line, whatever its length; written anew by another
 * program, it is read whole.
 *
 * @returns a problem when it is no such document
 */
export function readDocument(file: string): Result<ReadDocument> {
  const lines = linesOf(file)
  const first = lines.next().value ?? ''
  const head = first.endsWith(',') ? parsed(`${first.slice(0, -1)}}`) : undefined
  if (head !== undefined && lines.next().value === '"entries":[')
    return withHead(head, () => entriesOf(lines))
  if (statSync(file).size > mostWholeBytes)
    return failure(
      'reformatted',
      'Another program wrote this file anew, and it is too long to be read so. Take the file as it was exported.',
    )
  const whole = parsed([...linesOf(file)].join('\n'))
  if (typeof whole !== 'object' || whole === null || !('entries' in whole) || !Array.isArray(whole.entries))
    return failure('no-document', 'This is no exported log. Choose the .json file that an export made.')
  const { entries, ratings: _workedOutAnew, ...rest } = whole as { entries: unknown[]; ratings?: unknown }
  return withHead(rest, function* () {
    yield* entries
  })
}

function withHead(head: unknown, entries: () => Generator<unknown, void>): Result<ReadDocument> {
  const { format, version } = (head ?? {}) as { format?: unknown; version?: unknown }
  if (format !== documentFormat)
    return failure('no-document', 'This is no exported log. Choose the .json file that an export made.')
  if (!versionsTakenIn.some((known) => known === version))
    return failure('newer-document', 'A newer Inchwater made this file. Update this server, then try again.')
  const judged = documentHead.safeParse(head)
  return judged.success
    ? success({ head: judged.data, entries: entries() })
    : failure('head-does-not-fit', `The head of the file does not fit. ${whatDoesNotFit(judged.error)}`)
}

function* entriesOf(lines: Generator<string, void>): Generator<unknown, void> {
  let line = lines.next().value
  // No `for … of`: leaving it would end the lines as well.
  for (; line !== undefined && !line.startsWith(']'); line = lines.next().value) {
    const entry = parsed(line.replace(/,$/, ''))
    if (entry === undefined) throw new DocumentDamaged('its line is no JSON')
    yield entry
  }
  let last = line
  for (const behind of lines) last = behind
  if (last !== ']}') throw new DocumentDamaged('the file breaks off before its end')
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (cause) {
    if (cause instanceof SyntaxError) return undefined
    throw cause
  }
}

/** The lines of a file, without their ends; empty ones are left out. */
function* linesOf(file: string): Generator<string, void> {
  const descriptor = openSync(file, 'r')
  try {
    const decoder = new StringDecoder('utf8')
    const chunk = Buffer.alloc(chunkBytes)
    let rest = ''
    for (;;) {
      const read = readSync(descriptor, chunk, 0, chunkBytes, null)
      const text = rest + (read === 0 ? decoder.end() : decoder.write(chunk.subarray(0, read)))
      const lines = text.split(/\r?\n/)
      rest = read === 0 ? '' : (lines.pop() ?? '')
      for (const line of lines) if (line !== '') yield line
      if (read === 0) return
    }
  } finally {
    closeSync(descriptor)
  }
}
