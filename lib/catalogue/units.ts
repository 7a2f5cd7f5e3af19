import type { PressureUnit } from '@/lib/core/pressure'

/** The units a person can choose to read in, with what is shown small beside them. Labels are never converted. */
export const readingUnits = ['inH2O', 'Pa', 'mbar'] as const satisfies readonly PressureUnit[]

/** Metres and feet: the international foot, 0.3048 m exactly (NIST SP 811, App. B.8). */
export const metresPerFoot = 0.3048

export const feetOf = (metres: number): number => metres / metresPerFoot
export const metresOf = (feet: number): number => feet * metresPerFoot
