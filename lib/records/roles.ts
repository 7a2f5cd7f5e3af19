export const roles = ['manager', 'dispatcher', 'technician'] as const
export type Role = (typeof roles)[number]
