import { randomUUID } from 'node:crypto'
import type { Result } from '@/lib/core/result'
import type { Role } from '@/lib/records/envelope'
import { addPerson } from './changes'
import { nameField } from './names'
import { hashPassword, passwordField } from './passwords'
import { store } from './store'

type Wanted = { id?: string; name: string; role: Role; password: string }

/**
 * Adds a person without an invitation, from the server's side only: for seeding and tests.
 *
 * @throws RangeError when somebody has the id; ZodError when name or password are not allowed
 * @example await createPerson({ name: 'Mara Otell', role: 'manager', password: 'three plain words' })
 */
export async function createPerson({
  id = randomUUID(),
  name,
  role,
  password,
}: Wanted): Promise<Result<{ id: string }>> {
  const passwordHash = await hashPassword(passwordField.parse(password))
  const person = { id, name: nameField.parse(name), role, passwordHash }
  return addPerson(store().database, person, { kind: 'added' }, new Date())
}
