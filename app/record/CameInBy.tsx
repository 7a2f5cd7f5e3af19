'use client'

import { useDeviceState } from '../device/deviceContext'

/** Which row of which old list a record was made of; nothing for a record that somebody said. */
export function CameInBy({ id }: { id: string }) {
  const { file } = useDeviceState()
  const from = file.importedFrom.get(id)
  if (from === undefined) return null
  const fileName = file.imports.get(from.importId)?.body.fileName
  return (
    <p>
      Taken over from row {from.row} of{' '}
      <a href={`/record?id=${from.importId}`}>{fileName ?? 'an old list'}</a>.
    </p>
  )
}
