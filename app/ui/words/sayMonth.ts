import { sayDate } from './sayDate'

/** @example sayMonth('2026-01') // 'Jan 2026' */
export const sayMonth = (month: string): string => sayDate(`${month}-01`).replace(/^1 /, '')
