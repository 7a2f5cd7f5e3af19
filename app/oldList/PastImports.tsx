'use client'

import { useDeviceState } from '../device/deviceContext'
import { DataTable } from '../ui/paper/DataTable'
import { sayMoment } from '../ui/words/sayDate'

/** The imports that were made, newest first, with the way to take one back. */
export function PastImports() {
  const { file, names } = useDeviceState()
  const imports = [...file.imports.values()].sort((one, other) => (one.at < other.at ? 1 : -1))
  if (imports.length === 0) return null
  return (
    <DataTable
      caption="Imports that were made"
      columns={[
        {
          key: 'file',
          words: 'File',
          cell: ({ id, body }) => <a href={`/record?id=${id}`}>{body.fileName}</a>,
        },
        {
          key: 'who',
          words: 'By',
          cell: ({ by }) => names.get(by) ?? 'Somebody whose name is not on this device',
        },
        { key: 'when', words: 'When', cell: ({ at }) => sayMoment(at) },
        { key: 'rows', words: 'Rows', cell: ({ body }) => `${body.taken} of ${body.rows}`, numeric: true },
        {
          key: 'now',
          words: 'Now',
          cell: ({ id, withdrawn }) =>
            withdrawn === undefined ? (
              <a href={`/withdraw?record=${id}`}>Withdraw it</a>
            ) : (
              `Withdrawn: ${withdrawn.reason}`
            ),
        },
      ]}
      rows={imports}
      rowKey={({ id }) => id}
      empty={null}
    />
  )
}
