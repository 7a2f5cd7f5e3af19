'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { useDraft } from '../device/useDraft'
import { Empty } from '../ui/answers/Empty'
import { Refusal } from '../ui/answers/Refusal'
import { Button } from '../ui/form/Button'
import { Form } from '../ui/form/Form'
import { TextField } from '../ui/form/TextField'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { bodyFacts } from './bodyFacts'

/** Takes a record back, with a reason. It stays readable; nothing is edited or deleted. */
export function WithdrawScreen() {
  const id = useSearchParams().get('record') ?? ''
  const router = useRouter()
  const { file } = useDeviceState()
  const { add, trouble } = useAdd()
  const { value, change, done } = useDraft(`withdraw ${id}`, { reason: '' })
  const found = file.records.get(id)
  if (found === undefined) {
    return (
      <Empty
        page
        what="There is nothing to withdraw"
        why="The record is not on this device."
        todo={<a href="/">Go to Find</a>}
      />
    )
  }
  async function withdraw(): Promise<boolean> {
    const ids = await add([{ kind: 'withdrawal', body: { record: id, reason: value.reason } }])
    if (ids === undefined) return false
    await done()
    router.push(`/record?id=${id}`)
    return true
  }
  return (
    <Stack>
      <PageHeader
        title={`Withdraw: ${found.kind}`}
        lead="It no longer counts from then on. Both the record and your reason stay readable."
      />
      {trouble?.refusal !== undefined && (
        <Refusal
          title="This cannot be withdrawn"
          rule={trouble.refusal.rule}
          why={trouble.refusal.sentence}
          instead={<a href={`/record?id=${id}`}>Back to the record</a>}
        />
      )}
      <Form save={withdraw}>
        <Sheet
          title="What is withdrawn"
          foot={
            <Button type="submit" kind="main">
              Withdraw it
            </Button>
          }
        >
          <Stack>
            <Facts facts={bodyFacts(found.entry.body, file)} />
            <TextField
              label="Why?"
              name="reason"
              hint="For instance: misread digit, other furnace, entered twice."
              value={value.reason}
              onChange={(event) => change({ reason: event.target.value })}
              error={trouble?.fields.reason}
            />
          </Stack>
        </Sheet>
      </Form>
    </Stack>
  )
}
