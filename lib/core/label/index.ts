/** What a picture of a rating label seems to say. */
export { agreeing } from './agreeing'
export { confidenceLimit } from './confidenceLimit'
export { readLabel } from './readLabel'
export type * from './types'
