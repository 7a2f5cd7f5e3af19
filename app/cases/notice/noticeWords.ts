import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'

/** The state in which gas or power was left. */
export const stateWords: Readonly<Record<ShutDownNoticeBody['gas'], string>> = {
  off: 'Off',
  on: 'Still on',
  'not known': 'Not known',
}

export const authorityWords: Readonly<Record<NonNullable<ShutDownNoticeBody['authority']>, string>> = {
  told: 'Told',
  'not asked for here': 'The rules here do not ask for it',
  'not yet told': 'Not told yet',
}
