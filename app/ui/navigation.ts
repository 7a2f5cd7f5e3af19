/** A place that the navigation leads to. `path` is also the start of every address that belongs to it. */
export type Place = { words: string; path: string }

/** The main places, in the order of the work. This list is the only one: the bar and the side column read it. */
export const mainPlaces: readonly Place[] = [
  { words: 'Find', path: '/' },
  { words: 'Cases', path: '/cases' },
  { words: 'Phone desk', path: '/phone-desk' },
  { words: 'Callbacks', path: '/callbacks' },
  { words: 'Log', path: '/log' },
]

/** What the team learns from its own cases: the places below Callbacks. */
export const callbackPlaces: readonly Place[] = [
  { words: 'Figures', path: '/callbacks' },
  { words: 'Switches replaced', path: '/swaps' },
  { words: 'Left undone', path: '/left-undone' },
  { words: 'Reports', path: '/reports' },
  { words: 'Monthly letter', path: '/letter' },
]

/** Places that are visited now and then. */
export const morePlaces: readonly Place[] = [
  { words: 'Equipment', path: '/equipment' },
  { words: 'Gauges', path: '/gauges' },
  { words: 'People', path: '/people' },
  { words: 'Preferences', path: '/preferences' },
]

/** Where a person is before anybody knows who it is: the places above are not offered there. */
export const pathsWithoutPlaces: readonly string[] = ['/sign-in', '/set-up', '/join', '/reset']

/**
 * Whether an address belongs to a place: the same, or below it. `/` owns no address but itself.
 * Example: belongsTo('/phone-desk/7', '/phone-desk') is true, belongsTo('/logbook', '/log') is false.
 */
export function belongsTo(address: string, path: string): boolean {
  return address === path || (path !== '/' && address.startsWith(`${path}/`))
}
