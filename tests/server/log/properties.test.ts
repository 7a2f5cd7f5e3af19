import fc from 'fast-check'
import { v7 as uuidv7 } from 'uuid'
import { expect, test } from 'vitest'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { noon, openFreshLog, record, technician, withFreshLog } from './freshLog'

const fresh = withFreshLog()
const settings = { seed: 20260112, numRuns: 25 }

/** Up to 12 records in an order in which they can be said: each may refer to earlier ones. */
const history: fc.Arbitrary<RecordEnvelope[]> = fc
  .array(fc.record({ text: fc.string({ unit: 'binary' }), back: fc.array(fc.nat(11), { maxLength: 3 }) }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((said) => {
    const ids = said.map(() => uuidv7())
    return said.map(({ text, back }, index) => {
      const about = [...new Set(back.filter((at) => at < index).map((at) => ids[at]!))]
      return record({ id: ids[index]!, body: { text, about } })
    })
  })

/** Each test run starts with an empty log of its own, on a copy of the empty database. */
async function inLog(work: (log: ReturnType<typeof openFreshLog>) => Promise<void>): Promise<void> {
  const opened = openFreshLog(fresh.file)
  try {
    await work(opened)
    expect((await opened.log.verify()).trouble).toBeUndefined()
  } finally {
    opened.close()
  }
}
const contents = ({ log }: Pick<typeof fresh, 'log'>) =>
  log
    .readChanges({ after: 0, role: 'technician', limit: 1000 })
    .records.map(({ seq, ...said }) => ({ seq, said }))

test('any split of a history into batches gives the same log', async () => {
  await fc.assert(
    fc.asyncProperty(history, fc.array(fc.integer({ min: 1, max: 5 })), async (records, sizes) => {
      let whole: unknown
      await inLog(async (opened) => {
        await opened.add(records)
        whole = contents(opened)
      })
      await inLog(async (opened) => {
        const left = [...records]
        for (const size of sizes) await opened.add(left.splice(0, size))
        await opened.add(left)
        expect(contents(opened)).toEqual(whole)
      })
    }),
    settings,
  )
})

test('sending any of it again, in any order and however often, changes nothing', async () => {
  await fc.assert(
    fc.asyncProperty(history, fc.infiniteStream(fc.nat()), async (records, picks) => {
      await inLog(async (opened) => {
        await opened.add(records)
        const before = [contents(opened), (await opened.log.verify()).headHash]
        const again = [...picks.take(2 * records.length)].map((pick) => records[pick % records.length]!)
        const answers = await opened.add(again)
        expect(answers.map((answer) => answer.outcome)).toEqual(again.map(() => 'already stored'))
        expect([contents(opened), (await opened.log.verify()).headHash]).toEqual(before)
      })
    }),
    settings,
  )
})

test('records sent in any order are all in the log once those that wait have been sent often enough', async () => {
  await fc.assert(
    fc.asyncProperty(history, fc.infiniteStream(fc.nat()), async (records, picks) => {
      await inLog(async (opened) => {
        let left = records
          .map((said) => ({ said, at: picks.next().value as number }))
          .sort((a, b) => a.at - b.at)
          .map(({ said }) => said)
        for (let rounds = 0; left.length > 0; rounds++) {
          expect(rounds).toBeLessThanOrEqual(records.length)
          const answers = await opened.add(left)
          left = left.filter((_, index) => answers[index]?.outcome === 'waiting for')
        }
        const there = new Set(contents(opened).map(({ said }) => said.id))
        expect(there).toEqual(new Set(records.map(({ id }) => id)))
      })
    }),
    settings,
  )
})

test('what is read back is what was sent, for any text', async () => {
  await fc.assert(
    fc.asyncProperty(history, async (records) => {
      await inLog(async (opened) => {
        const answers = await opened.add(records, technician, noon.toISOString())
        expect(answers.map(({ outcome }) => outcome)).toEqual(records.map(() => 'stored'))
        expect(contents(opened).map(({ said: { receivedAt, clockShiftMs, ...said } }) => said)).toEqual(
          records,
        )
      })
    }),
    settings,
  )
})
