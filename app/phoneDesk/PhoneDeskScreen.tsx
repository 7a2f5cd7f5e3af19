'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { RatingRequestBody } from '@/lib/records/kinds/ratingRequest'
import { settlement } from '@/lib/records/kinds/settlement'
import { openRequests } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { Facts } from '../ui/paper/Facts'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayMoment } from '../ui/words/sayDate'
import { byNeed } from './byNeed'
import { DisputesSection } from './DisputesSection'
import { answerHref, carrying } from './requestAddress'

/** The ratings that somebody in a basement is waiting for. */
export function PhoneDeskScreen() {
  const { file, names, me } = useDeviceState()
  const requests = byNeed(openRequests(file))
  return (
    <Stack>
      <PageHeader
        title="Phone desk"
        lead="Ratings that are asked for and not on file yet, the most needed first."
        actions={<ButtonLink href="/ask">Ask for a rating</ButtonLink>}
      />
      {requests.length === 0 && (
        <Empty
          what="Nobody is waiting for a rating"
          why="Every question from the field has its answer on file."
          todo={<a href="/">Find a setpoint whose level could be better</a>}
        />
      )}
      {requests.map((request) => (
        <Request key={request.id} {...{ request, file, names }} />
      ))}
      {settlement.mayAdd.includes(me.role) && <DisputesSection />}
    </Stack>
  )
}

type RequestProps = {
  request: Entry<RatingRequestBody>
  file: TeamFile
  names: ReadonlyMap<string, string>
}

function Request({ request, file, names }: RequestProps) {
  const { body } = request
  const position =
    body.positionId === undefined ? undefined : file.positions.get(file.keptId(body.positionId))
  const range = position && file.ranges.get(file.keptId(position.body.rangeId))
  const asked = `${names.get(request.by) ?? 'Somebody'}, ${sayMoment(request.at)}`
  return (
    <Sheet
      title={
        position === undefined
          ? [body.positionName, body.model].filter(Boolean).join(', ')
          : `${position.body.name}, ${range?.body.name ?? ''}`
      }
      sub={body.needs.length === 0 ? undefined : body.needs.join(' · ')}
      foot={
        <Row>
          {position === undefined ? (
            <ButtonLink
              kind="main"
              href={carrying(`/equipment?${new URLSearchParams({ model: body.model ?? '' })}`, request)}
            >
              Add the range and switch, then the answer
            </ButtonLink>
          ) : (
            <ButtonLink kind="main" href={answerHref(request, position.id)}>
              Record the answer
            </ButtonLink>
          )}
          <ButtonLink kind="quiet" href={`/withdraw?record=${request.id}`}>
            Withdraw the question
          </ButtonLink>
        </Row>
      }
    >
      <Facts
        facts={[
          { key: 'asked', name: 'Asked by', value: asked },
          ...(body.model === undefined
            ? []
            : [{ key: 'model', name: 'Model', value: <AsPrinted text={body.model} /> }]),
          ...(body.serial === undefined
            ? []
            : [{ key: 'serial', name: 'Serial', value: <AsPrinted text={body.serial} /> }]),
          { key: 'printed', name: 'Printed on the switch', value: <AsPrinted text={body.printed} /> },
          ...(body.measured === undefined
            ? []
            : [{ key: 'measured', name: 'Measured', value: body.measured }]),
          ...(body.note === undefined ? [] : [{ key: 'note', name: 'Note', value: body.note }]),
        ]}
      />
    </Sheet>
  )
}
