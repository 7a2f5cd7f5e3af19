import { listEndings } from '@/lib/server/devices/endings'
import { listDevices } from '@/lib/server/devices/listDevices'
import { listSetAside } from '@/lib/server/devices/setAside'
import { answer } from '@/lib/server/http/answers'
import { requireRole } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'
import { buildId } from '../../buildId'

/** Every device that was ever in contact, which sessions a manager has ended, and how many records are set aside. */
export async function GET(request: Request): Promise<Response> {
  const manager = await requireRole(request, 'manager')
  if (manager instanceof Response) return manager
  const { database } = store()
  const undecided = listSetAside(database).filter(({ refused }) => refused === undefined).length
  return answer({
    devices: listDevices(database),
    endings: listEndings(database),
    undecided,
    build: buildId(),
  })
}
