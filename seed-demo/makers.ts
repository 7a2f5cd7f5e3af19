import type { ElevationBand } from '@/lib/core/vocabulary'
import type { SwitchPoints } from './writing'
import { inchMarks, makeAndBreakWords, pascalLabel, plainWords, signedWords, withTolerance } from './writing'

export type MakerKey = 'orrinmoor' | 'tessenby' | 'quistane' | 'stavemere' | 'wexhollow' | 'ombrick'

export type Maker = {
  name: string
  note: string
  /** Where this maker changes the switch with the elevation, lowest first. One entry: nowhere. */
  bands: readonly ElevationBand[]
  /** How its switch labels are worded. */
  label: (points: SwitchPoints) => string
  partNumber: (running: number) => string
  technicalLine: string
}

const digits = (value: number, width: number) => String(value).padStart(width, '0')

/**
 * Six invented makers of furnaces, resembling no real one as far as we know (checked from memory). The elevation
 * at which a switch changes is each maker's own: no two agree, as in the trade. Whole feet, rounded to whole metres.
 */
export const makers: Readonly<Record<MakerKey, Maker>> = {
  orrinmoor: {
    name: 'Orrinmoor',
    note: 'Their sheets are dated by month. Changes at 3,000 and 6,500 ft. Always ask for the revision letter.',
    bands: [{ toMetres: 914 }, { fromMetres: 915, toMetres: 1981 }, { fromMetres: 1982 }],
    label: withTolerance,
    partNumber: (running) => `OM-${digits(7700 + running, 4)}`,
    technicalLine: 'Orrinmoor technical line',
  },
  tessenby: {
    name: 'Tessenby',
    note: 'One change at 5,000 ft. Technical line wants the serial before anything else.',
    bands: [{ toMetres: 1524 }, { fromMetres: 1525 }],
    label: inchMarks,
    partNumber: (running) => `T-40-${digits(100 + running, 3)}`,
    technicalLine: 'Tessenby field support',
  },
  quistane: {
    name: 'Quistane',
    note: 'One change at 6,000 ft.',
    bands: [{ toMetres: 1829 }, { fromMetres: 1830 }],
    label: makeAndBreakWords,
    partNumber: (running) => `61Q.${digits(2200 + running, 4)}`,
    technicalLine: 'Quistane technical desk',
  },
  stavemere: {
    name: 'Stavemere',
    note: 'One change at 3,500 ft. Kit sheets list two numbers for a band; read the small print.',
    bands: [{ toMetres: 1067 }, { fromMetres: 1068 }],
    label: signedWords,
    partNumber: (running) => `SM ${digits(200 + running, 3)}/31`,
    technicalLine: 'Stavemere help line',
  },
  wexhollow: {
    name: 'Wexhollow',
    note: 'Same switch at every elevation; the orifices change instead.',
    bands: [{}],
    label: plainWords,
    partNumber: (running) => `WXH${digits(3300 + running, 4)}P`,
    technicalLine: 'Wexhollow engineering',
  },
  ombrick: {
    name: 'Ombrick',
    note: 'Labels in pascals, sheets in inches. One change at 3,800 ft.',
    bands: [{ toMetres: 1158 }, { fromMetres: 1159 }],
    label: pascalLabel,
    partNumber: (running) => `O${digits(5500 + running, 4)}-2`,
    technicalLine: 'Ombrick service office',
  },
}
