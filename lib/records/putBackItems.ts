/** What a furnace must have back before anybody leaves it. */
export const putBackItems = [
  'tee out',
  'hose on its own port',
  'test holes plugged',
  'trap primed',
  'joints sealed',
  'door on',
] as const
