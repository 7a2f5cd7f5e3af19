import { type MakerKey, makers } from '../makers'
import { distributors } from '../names'
import { demoPeople } from '../people'
import type { Team } from '../team'

/** The requests whose calls are told. */
export type Asked = { answered: string; answeredBy: string[]; waiting: string }

/** Whom the team rings, what became of some calls, and who saw an answer. */
export function tellCalls(team: Team, { answered, answeredBy, waiting }: Asked): void {
  const organisations = whomToRing(team)
  const ofOmbrick = organisations.get(makers.ombrick.technicalLine)!
  const ridge = organisations.get(distributors.ridge)!
  team.say({
    kind: 'answer seen',
    by: 'tobin',
    on: '2025-12-03',
    body: {
      requestId: answered,
      reportIds: answeredBy,
      personId: demoPeople.tobin.id,
      how: 'shown on the screen',
    },
  })
  const say = (kind: string, by: 'dunja' | 'piet' | 'sunniva', on: string, body: object) =>
    team.say({ kind, by, on, body })
  say('call attempt', 'dunja', '2026-11-18', {
    organisationId: ridge,
    requestIds: [waiting],
    outcome: 'offered a general-purpose part',
    person: 'Okke',
    offered: 'an adjustable one “that fits everything”',
    note: 'Thanked him and rang the maker.',
  })
  say('call attempt', 'dunja', '2026-11-18', {
    organisationId: ofOmbrick,
    requestIds: [waiting],
    outcome: 'ring back',
    ringBackAt: '2026-11-20T16:30:00.000Z',
    note: 'The one who has the Rill Two drawings is back on Friday.',
  })
  say('asks too', 'sunniva', '2026-11-19', {
    requestId: waiting,
    model: 'RLT/100/2',
    serial: 'R2T-38814',
    printed: 'nothing',
    needs: [],
    note: 'Same house row, number 3. Runs, but I would like to know.',
  })
  say('promise', 'piet', '2026-11-19', { requestId: waiting, minutes: 30 })
}

/** The maker's technical lines and the counters, by name: typed in with the catalogue. */
function whomToRing(team: Team): Map<string, string> {
  const on = '2022-09-19'
  const say = (name: string, source: 'factory support' | 'distributor', keys: readonly MakerKey[]) => {
    const makerIds = keys.map((key) => team.makerId(key))
    return [
      name,
      team.say({ kind: 'organisation', by: 'piet', on, body: { name, source, makerIds } }),
    ] as const
  }
  const keys = Object.keys(makers) as MakerKey[]
  return new Map([
    ...keys.map((key) => say(makers[key].technicalLine, 'factory support', [key])),
    say(distributors.quarl, 'distributor', ['orrinmoor', 'quistane', 'stavemere']),
    say(distributors.ridge, 'distributor', ['tessenby', 'wexhollow', 'ombrick', 'stavemere']),
    say(distributors.vennet, 'distributor', ['orrinmoor', 'ombrick']),
  ])
}
