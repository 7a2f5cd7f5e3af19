import { randomUUID } from 'node:crypto'
import type { Database } from 'better-sqlite3'
import { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import { roles } from '@/lib/records/envelope'
import { addPerson, isNameTaken, nameTaken } from './changes'
import { writeEvent } from './events'
import { closeLink, type MadeLink, makeLink, readLink, tokenField } from './links'
import { nameField } from './names'
import { hashPassword, passwordField } from './passwords'

export const invitationForm = z.object({
  name: nameField,
  role: z.enum(roles, 'Choose one of the three roles.'),
})
export const acceptanceForm = z.object({ token: tokenField, password: passwordField })

/** Makes the link that lets somebody join under this name, once, within a week. */
export function invite(
  database: Database,
  { name, role }: z.infer<typeof invitationForm>,
  by: string,
  now: Date,
): Result<MadeLink> {
  return database
    .transaction(() => {
      if (isNameTaken(database, name)) return nameTaken(name)
      writeEvent(database, { kind: 'invited', byId: by, detail: { name, role } }, now)
      return success(makeLink(database, { purpose: 'invitation', name, role }, by, now))
    })
    .immediate()
}

/** Adds the invited person, with the password they chose. Answers their name, for the first sign-in. */
export async function acceptInvitation(
  database: Database,
  form: z.infer<typeof acceptanceForm>,
  now: Date,
): Promise<Result<{ name: string }>> {
  const link = readLink(database, 'invitation', form.token, now)
  if (link?.purpose !== 'invitation') return deadInvitation
  const { name, role, madeBy: byId } = link
  const passwordHash = await hashPassword(form.password)
  return database
    .transaction(() => {
      if (isNameTaken(database, name)) return nameTaken(name)
      if (!closeLink(database, link.id, now)) return deadInvitation
      const added = addPerson(
        database,
        { id: randomUUID(), name, role, passwordHash },
        { kind: 'joined', byId },
        now,
      )
      return added.ok ? success({ name }) : added
    })
    .immediate()
}

const deadInvitation = failure(
  'dead-link',
  'This invitation was used, called back, or is over a week old. Ask a manager for a new one.',
)
