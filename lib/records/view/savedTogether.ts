import type { Entry } from '../fold/entry'

type Said = Pick<Entry<unknown>, 'by' | 'at'>

/** Records of one form are saved in one step; said this far apart they are of two. */
const oneStepMs = 60_000

/** Whether two records were most likely saved in one step: by the same person, in the same minute. */
export const savedTogether = (one: Said, other: Said): boolean =>
  one.by === other.by && Math.abs(Date.parse(one.at) - Date.parse(other.at)) < oneStepMs
