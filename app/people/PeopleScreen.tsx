'use client'

import '@/lib/records/withoutEval'
import { type FormEvent, Fragment, useCallback, useEffect, useState } from 'react'
import { z } from 'zod'
import { fetchDevices, type KnownDevices } from '@/lib/device/managing'
import { fetchPeople } from '@/lib/device/transport'
import { type Role, roles } from '@/lib/records/roles'
import { useDeviceState } from '../device/deviceContext'
import { type Posted, post } from '../door/post'
import { Problem } from '../ui/answers/Problem'
import { Button, ButtonLink } from '../ui/form/Button'
import { Select } from '../ui/form/Select'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { sayMoment } from '../ui/words/sayDate'
import { type Answer, AnswerHere } from './AnswerHere'
import { DevicesOf } from './DevicesOf'

type Listed = { id: string; name: string; role: Role; active: boolean; program?: boolean }

const roleOptions = roles.map((role) => ({ value: role, words: role }))
/** In place of a person's id: nobody has that one yet. */
const invitation = 'invitation'
const madeLink = z.object({ link: z.string(), expiresAt: z.string() })

/** Who is on the team. A manager invites, changes roles, makes links for new passwords and signs devices out. */
export function PeopleScreen() {
  const { me, names } = useDeviceState()
  const isManager = me.role === 'manager'
  const [people, setPeople] = useState<readonly Listed[]>()
  const [known, setKnown] = useState<KnownDevices>()
  const [problem, setProblem] = useState<string>()
  const [answered, setAnswered] = useState<{ about: string; answer: Answer; nth: number }>()

  const load = useCallback(async () => {
    const called = await fetchPeople()
    if (called.ok) setPeople(called.value)
    else setProblem(called.message)
    if (!isManager) return
    const devices = await fetchDevices()
    if (devices.ok) setKnown(devices.value)
    else setProblem(devices.message)
  }, [isManager])
  useEffect(() => void load(), [load])

  /** Shows what came of it where it was asked for. @param about a person's id, or the invitation */
  const afterFor =
    (about: string) =>
    async (posted: Posted, words: string): Promise<void> => {
      setAnswered((before) => ({ about, answer: answerOf(posted, words), nth: (before?.nth ?? 0) + 1 }))
      if (posted.ok) await load()
    }
  const answerTo = (about: string) =>
    answered?.about === about && <AnswerHere key={answered.nth} answer={answered.answer} />

  async function invite(event: FormEvent<HTMLFormElement>) {
    event.preventDefault()
    const form = event.currentTarget
    const typed = new FormData(form)
    const posted = await post('/api/people/invitations', { name: typed.get('name'), role: typed.get('role') })
    await afterFor(invitation)(posted, `Invitation for ${typed.get('name')}`)
    if (posted.ok) form.reset()
  }

  return (
    <Stack>
      <PageHeader
        title="People"
        lead={
          isManager
            ? 'Who is on the team, and what they may do.'
            : 'Who is on the team. Managers can change it.'
        }
        actions={isManager ? <ButtonLink href="/tokens">Tokens of office programs</ButtonLink> : undefined}
      />
      <Problem>{problem}</Problem>
      {known !== undefined && known.undecided > 0 && (
        <p>
          <a href="/set-aside">
            {known.undecided === 1 ? '1 record is' : `${known.undecided} records are`} set aside from ended
            devices
          </a>
          , and {known.undecided === 1 ? 'waits' : 'wait'} for a manager.
        </p>
      )}
      {people === undefined && problem === undefined && <p role="status">Asking the server …</p>}
      {people?.map((person) => {
        const after = afterFor(person.id)
        return (
          <Fragment key={person.id}>
            <Sheet
              title={person.name + (person.id === me.id ? ' (you)' : '')}
              sub={roleWords(person)}
              foot={
                isManager ? (
                  person.program ? (
                    <Program {...{ person, after }} />
                  ) : (
                    <Manage {...{ person, after }} />
                  )
                ) : undefined
              }
            >
              {known !== undefined && (
                <DevicesOf
                  {...{ name: person.name, endings: known.endings, build: known.build, after }}
                  maySignIn={person.active}
                  devices={known.devices.filter(({ personId }) => personId === person.id)}
                  nameOf={(id) => names.get(id) ?? 'a manager'}
                  now={new Date().toISOString()}
                />
              )}
            </Sheet>
            {answerTo(person.id)}
          </Fragment>
        )
      })}
      {isManager && (
        <form onSubmit={invite} noValidate>
          <Sheet
            title="Invite somebody"
            sub="You get a link to pass on. It works once."
            foot={
              <Button type="submit" kind="main">
                Make the invitation
              </Button>
            }
          >
            <Stack>
              <TextField label="Name, as the team will see it" name="name" />
              <Select label="Role" name="role" options={roleOptions} defaultValue="technician" />
            </Stack>
          </Sheet>
        </form>
      )}
      {answerTo(invitation)}
      {isManager && (
        <Sheet
          title="Data in and out"
          sub="An old list of ratings comes in row by row; everything on file goes out."
          foot={
            <Row>
              <ButtonLink href="/import">Import an old list</ButtonLink>
              <ButtonLink href="/export">Export</ButtonLink>
            </Row>
          }
        >
          {null}
        </Sheet>
      )}
    </Stack>
  )
}

function answerOf(posted: Posted, words: string): Answer {
  if (!posted.ok) return { problem: posted.problem.message }
  const made = madeLink.safeParse(posted.value)
  return made.success
    ? { words: `${words}, good until ${sayMoment(made.data.expiresAt)}`, link: made.data.link }
    : { done: words }
}

const roleWords = ({ role, active, program }: Listed): string =>
  [program ? `${role}, an office program` : role, active ? '' : program ? 'taken off' : 'signed out for good']
    .filter((words) => words !== '')
    .join(', ')

type ManageProps = { person: Listed; after: (posted: Posted, words: string) => Promise<void> }

function Manage({ person, after }: ManageProps) {
  const act = async (path: string, words: string, body: Record<string, unknown> = {}) =>
    after(await post(path, body), words)
  return (
    <Row>
      <Select
        label={`Role of ${person.name}`}
        name={`role-${person.id}`}
        value={person.role}
        onChange={(event) =>
          void act(`/api/people/${person.id}/role`, `${person.name} is now a ${event.target.value}`, {
            role: event.target.value,
          })
        }
        options={roleOptions}
      />
      <Button
        onClick={() =>
          void act('/api/people/resets', `A new password for ${person.name}`, { personId: person.id })
        }
      >
        Link for a new password
      </Button>
      <Button
        onClick={() =>
          void act(`/api/people/${person.id}/sign-out-everywhere`, `${person.name} is signed out everywhere`)
        }
      >
        Sign out everywhere
      </Button>
      {person.active ? (
        <Button
          kind="quiet"
          onClick={() =>
            void act(`/api/people/${person.id}/deactivate`, `${person.name} can no longer sign in`)
          }
        >
          Take off the team
        </Button>
      ) : (
        <Button
          kind="quiet"
          onClick={() => void act(`/api/people/${person.id}/reactivate`, `${person.name} can sign in again`)}
        >
          Take back
        </Button>
      )}
    </Row>
  )
}

/** An office program has tokens in place of a password. */
function Program({ person, after }: ManageProps) {
  const act = async (what: 'deactivate' | 'reactivate', words: string) =>
    after(await post(`/api/people/${person.id}/${what}`), words)
  return (
    <Row>
      <ButtonLink href="/tokens">Its tokens</ButtonLink>
      {person.active ? (
        <Button
          kind="quiet"
          onClick={() => void act('deactivate', `no token of ${person.name} works any more`)}
        >
          Take off the team
        </Button>
      ) : (
        <Button
          kind="quiet"
          onClick={() => void act('reactivate', `the tokens of ${person.name} work again`)}
        >
          Take back
        </Button>
      )}
    </Row>
  )
}
