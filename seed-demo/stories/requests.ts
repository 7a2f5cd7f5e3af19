import type { Team } from '../team'
import { support } from '../tell'
import { type Asked, tellCalls } from './calls'

/** Questions from the field: two that were answered, four that still wait. */
export function tellRequests(team: Team): void {
  const answered = answeredRequests(team)
  tellCalls(team, { ...answered, waiting: openRequests(team) })
}

/** Answers the first of them, and the reports that answered it. */
function answeredRequests(team: Team): Pick<Asked, 'answered' | 'answeredBy'> {
  const wendle = team.say({
    kind: 'rating request',
    by: 'tobin',
    on: '2025-12-03',
    body: {
      positionId: team.positionId('Wendle 100 / High fire'),
      model: 'WEN.100.22',
      serial: '22.6631.0',
      printed: 'nothing',
      measured: '0.61 in. w.c., steady',
      needs: ['house cold'],
      note: 'Label is gone, glue only. Can wait in the van for half an hour.',
    },
  })
  const answeredBy = support(team, {
    at: 'Wendle 100 / High fire',
    by: 'dunja',
    on: '2025-12-03',
    reference: 'F-20077',
    requestId: wendle,
    note: 'Twenty minutes of music, then a very clear answer.',
  })
  const lift = team.say({
    kind: 'rating request',
    by: 'lale',
    on: '2026-01-12',
    body: {
      positionId: team.positionId('Sallow V 090 / High fire'),
      furnaceId: team.furnaceId('Lift house, upper room'),
      printed: '-1.2? WC, last digit scratched',
      needs: [],
      note: 'At the service, nothing wrong. Only so that we have it.',
    },
  })
  support(team, {
    at: 'Sallow V 090 / High fire',
    by: 'piet',
    on: '2026-01-14',
    band: 1,
    reference: 'F-20255',
    requestId: lift,
  })
  return { answered: wendle, answeredBy }
}

/** Answers the one for which somebody has already rung. */
function openRequests(team: Team): string {
  const ask = (by: 'tobin' | 'lale' | 'sunniva', on: string, body: object) =>
    team.say({ kind: 'rating request', by, on, body })
  ask('lale', '2026-11-12', {
    positionId: team.positionId('Sallow V 090 / Middle fire'),
    furnaceId: team.furnaceId('Lift house, upper room'),
    printed: 'nothing',
    needs: [],
    note: 'Not urgent. The middle one is the only one of the three without a number.',
  })
  ask('sunniva', '2026-11-17', {
    model: 'VLK 090 S',
    serial: '0417-22',
    positionName: 'High fire',
    printed: 'PF .7 something',
    measured: '0.66 in. w.c., falling to 0.58 when hot',
    needs: ['elderly or ill people', 'furnace left off'],
    note: 'Make I have never seen. Plate says Velkast, sold through the big store down the valley. Couple in their eighties; they have the stove and my number.',
  })
  const waiting = ask('tobin', '2026-11-18', {
    positionId: team.positionId('Rill Two 100 / Low fire'),
    model: 'RLT/100/2',
    serial: 'R2T-40556',
    printed: 'nothing',
    measured: '0.33 in. w.c., steady, cold start',
    needs: ['house cold', 'infants'],
    note: 'Twins, four months. I am here till five.',
  })
  ask('lale', '2026-11-19', {
    positionId: team.positionId('Marl Two 105 / Low fire'),
    furnaceId: team.furnaceId('Pass Inn, kitchen side'),
    printed: 'label burnt off',
    needs: ['no other heat', 'freezing outside'],
    note: 'Road closes at eight. Guests in the house.',
  })
  return waiting
}
