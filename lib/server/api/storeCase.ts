import { v7 as uuidv7 } from 'uuid'
import type { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import { caseKind } from '@/lib/records/kinds/case'
import { theLog } from '../database'
import { announceNews } from '../live/live'
import { whyNotStored } from '../log/whyNotStored'
import type { fileCase } from './operations'
import type { Caller } from './tokens'

type Sent = z.infer<typeof fileCase.body>
type Stored = z.infer<typeof fileCase.answer>

/** Files a case as said by the program that calls, through the one way into the log. */
export async function storeCase(sent: Sent, { person }: Caller, now: Date): Promise<Result<Stored>> {
  const { id = uuidv7(), saidAt = now.toISOString(), ...body } = sent
  const record = {
    id,
    kind: caseKind.kind,
    version: caseKind.version,
    body,
    saidAt,
    author: person.id,
    // Not the token, which is renewed now and then: the same case sent again stays the same.
    device: `program ${person.id}`,
  }
  try {
    const [answer] = await theLog().appendRecords({ sentAt: now.toISOString(), records: [record] }, person)
    if (answer === undefined) throw new RangeError('storeCase: the log answered nothing')
    if (answer.outcome === 'refused') return failure('refused', answer.sentence)
    if (answer.outcome === 'waiting for') {
      return failure(
        'no-such-furnace',
        'No furnace with that id is on file. Look for it under /api/v1/furnaces.',
      )
    }
    if (answer.outcome === 'stored') announceNews()
    return success({ id, seq: answer.seq, outcome: answer.outcome, address: `/case?id=${id}` })
  } catch (cause) {
    const problem = whyNotStored(cause)
    if (problem === undefined) throw cause
    return { ok: false, problem }
  }
}
