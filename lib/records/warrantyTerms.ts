import type { Role } from './envelope'

/** What became of the credit that was asked for a part that went back. */
export const warrantyOutcomes = ['credited', 'denied', 'waiting'] as const

/** Who may record an answer about it: whoever deals with distributors and makers. */
export const mayRecordWarranty: readonly Role[] = ['manager', 'dispatcher']
