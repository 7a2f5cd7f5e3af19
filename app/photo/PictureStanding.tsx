'use client'

import { pictureState, withheldBy } from '@/lib/records/view/photos'
import { useDeviceState } from '../device/deviceContext'
import { sayMoment } from '../ui/words/sayDate'

/** Whether a picture is held, so that its photo can be a proof, or why it is not, and what happens next. */
export function PictureStanding({ sha256 }: { sha256: string }) {
  const { file, names, pictures } = useDeviceState()
  const state = pictureState(file, sha256)
  const here = pictures.find((picture) => picture.sha256 === sha256)
  if (state === 'withheld') {
    const by = file.records.get(withheldBy(file, sha256) ?? '')?.entry
    return (
      <p>
        The picture is withheld. It counts as no proof any more; its record and its hash stay.{' '}
        {by !== undefined && `Why: ${String(by.body.reason)} `}
        {by !== undefined && (
          <a href={`/record?id=${by.id}`}>
            {names.get(by.by) ?? 'A manager'}, {sayMoment(by.at)}
          </a>
        )}
      </p>
    )
  }
  if (state === 'held') return <p>The server holds the picture: it counts as a proof.</p>
  if (here?.refusal !== undefined) {
    return (
      <p>
        The server did not take the picture: {here.refusal} <a href="/waiting">Try again, or drop it</a>
      </p>
    )
  }
  return (
    <p>
      Picture not here yet.{' '}
      {here === undefined ? 'It comes with the device that took it.' : 'It is sent by itself.'} Until the
      server holds it, it counts as no proof.
    </p>
  )
}
