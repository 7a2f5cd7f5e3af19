import { fromPascals, pressureNumeral, toPascals } from '@/lib/core/pressure'

/** The two points of a switch and their tolerance, in hundredths of an inch of water. */
export type SwitchPoints = {
  make: number
  break: number
  tolerance: number
  /** It opens as pressure rises and closes again below: then the break is the larger number. */
  opensOnRise?: boolean
}

/** Hundredths as a number of inches, two decimals. @example inches(62) // '0.62' */
export const inches = (hundredths: number): string => (hundredths / 100).toFixed(2)

/** Without the leading zero, as many labels print it. @example bare(62) // '.62' */
export const bare = (hundredths: number): string => inches(hundredths).replace(/^0/, '')

/** @example pascals(62) // '154' */
export const pascals = (hundredths: number): string =>
  pressureNumeral(toPascals(hundredths / 100, 'inH2O'), 'Pa', 0)

/** The same pressure in millibars, two decimals. @example millibars(62) // '1.54' */
export const millibars = (hundredths: number): string =>
  fromPascals(toPascals(hundredths / 100, 'inH2O'), 'mbar').toFixed(2)

// How labels word the two points. Each reads back as exactly these points.

export const withTolerance = (p: SwitchPoints): string =>
  p.opensOnRise
    ? `OPEN ${inches(p.break)} ±${inches(p.tolerance)} / CLOSE ${inches(p.make)} ±${inches(p.tolerance)} IN WC`
    : `CLOSE ${inches(p.make)} ±${inches(p.tolerance)} / OPEN ${inches(p.break)} ±${inches(p.tolerance)} IN WC`

export const inchMarks = (p: SwitchPoints): string =>
  `-${inches(p.make)}" WC CLOSE, -${inches(p.break)}" WC OPEN`

export const makeAndBreakWords = (p: SwitchPoints): string =>
  `MAKE ${bare(p.make)} BREAK ${bare(p.break)} IN. W.C.`

export const signedWords = (p: SwitchPoints): string =>
  p.opensOnRise
    ? `OPENS +${bare(p.break)} CLOSES +${bare(p.make)} W.C.`
    : `CLOSES -${bare(p.make)} OPENS -${bare(p.break)} W.C.`

export const plainWords = (p: SwitchPoints): string =>
  `CLOSE ${inches(p.make)}" W.C. / OPEN ${inches(p.break)}" W.C.`

export const pascalLabel = (p: SwitchPoints): string =>
  `Close ${pascals(p.make)} Pa, open ${pascals(p.break)} Pa`

/** As a service sheet prints both points. */
export const sheetLine = (p: SwitchPoints): string =>
  `closes ${inches(p.make)} ± ${inches(p.tolerance)}, opens ${inches(p.break)} ± ${inches(p.tolerance)} in. w.c.`

/** As a dispatcher takes both points down from the telephone. */
export const dictated = (p: SwitchPoints): string =>
  `closes at ${inches(p.make)}, opens at ${inches(p.break)} in. w.c.`

export const dictatedClose = (number: string): string => `closes at ${number} in. w.c.`

export const dictatedOpen = (number: string): string => `opens at ${number} in. w.c.`
