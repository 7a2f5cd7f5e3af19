import { plainSpelling } from '@/lib/core/find/plainSpelling'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { leadingBack } from '../equipment/form/returnTo'
import { partClassNames } from '../equipment/partClassWords'
import { Button, ButtonLink } from '../ui/form/Button'
import { Row } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import type { ReportForm } from './reportForm'

type Props = {
  /** What the scanner read, if it was asked. */
  read: string | undefined
  form: ReportForm
  change: (part: Partial<ReportForm>) => void
  file: TeamFile
  /** This form's own address. */
  here: string
}

/** The code on the part: scanned on a page of its own, shown letter for letter here, and put in by a tap. */
export function ScannedPart({ read, form, change, file, here }: Props) {
  const scan = (
    <ButtonLink kind="quiet" href={leadingBack('/scan?take=part', here)}>
      {read === undefined ? 'Scan the code on the part' : 'Scan it again'}
    </ButtonLink>
  )
  if (read === undefined) return scan
  const parts = counting(file.parts).filter(
    ({ body }) => plainSpelling(body.partNumber) === plainSpelling(read),
  )
  const [part, another] = parts
  return (
    <div role="status">
      <p>
        Scanned: <AsPrinted text={read} />.{' '}
        {part === undefined
          ? 'No part of that number is on file.'
          : `On file: ${parts.map(({ body }) => `${body.partNumber} (${partClassNames[body.class]})`).join(', ')}.`}
      </p>
      <Row>
        {form.partNumber !== read && (
          <Button
            onClick={() =>
              change({
                partNumber: read,
                partNumberRead: read,
                ...(part === undefined || another !== undefined ? {} : { readOffPart: part.id }),
              })
            }
          >
            Use it as the part number
          </Button>
        )}
        {scan}
      </Row>
    </div>
  )
}
