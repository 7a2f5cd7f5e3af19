import { answerSetpoint } from '@/lib/server/api/answerSetpoint'
import { apiRoute } from '@/lib/server/api/apiRoute'
import { askSetpoint } from '@/lib/server/api/operations'
import { teamFileOf } from '@/lib/server/api/teamFileOf'
import { listPeople } from '@/lib/server/people/list'
import { store } from '@/lib/server/people/store'

/** A setpoint with its standing, for an office program: `?part=…`, `?position=…` or `?furnace=…`. */
export const GET = apiRoute(askSetpoint, async ({ query }, { person }) => {
  const file = await teamFileOf(person.role)
  const names = new Map(listPeople(store().database).map(({ id, name }) => [id, name]))
  return answerSetpoint(file, query, (id) => names.get(id) ?? 'somebody unknown', new Date().toISOString())
})
