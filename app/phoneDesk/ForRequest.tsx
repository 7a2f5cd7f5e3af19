'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { RatingRequestBody } from '@/lib/records/kinds/ratingRequest'
import { useDeviceState } from '../device/deviceContext'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayMoment } from '../ui/words/sayDate'

/** Says for which request something is added, on the way from the request to its answer. */
export function ForRequest({ request }: { request: Entry<RatingRequestBody> | undefined }) {
  const { names } = useDeviceState()
  if (request === undefined) return null
  const { model, positionName } = request.body
  return (
    <p>
      For the question of {names.get(request.by) ?? 'somebody'}, {sayMoment(request.at)}
      {model !== undefined && (
        <>
          : model <AsPrinted text={model} />
        </>
      )}
      {positionName !== undefined && (
        <>
          , switch <AsPrinted text={positionName} />
        </>
      )}
      . Its answer comes next. <a href="/phone-desk">Back to the Phone desk</a>
    </p>
  )
}
