export type * from './types'
