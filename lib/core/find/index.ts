/** Finding part and model numbers, makers and positions as people type them. */
export { buildFindIndex, type FindEntry, type FindIndex } from './buildFindIndex'
export { find, type Match } from './find'
export { plainSpelling } from './plainSpelling'
