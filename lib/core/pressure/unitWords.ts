import { dot, here, unitEnd } from './patterns'
import type { PressureUnit } from './units'

const inches = `(?:in(?:ch(?:es)?)?${dot}|")`
const millimeters = `(?:mm${dot}|millimet(?:er|re)s?)`
const columnAlone = `(?:w(?:ater)?${dot} ?(?:c(?:ol(?:umn)?)?|g(?:au?ge)?)|h2o)`
const column = `(?:${columnAlone}|water|aq|\\[h2o\\])`
const mercury = `(?:hg|mercury|\\[hg\\])`

/**
 * How people and labels write the units, and the UCUM codes. Of two that match, the earlier counts: the longer
 * spellings come first. A column of water without a length is one of inches, as in North American practice.
 */
export const unitPatterns: readonly (readonly [RegExp, PressureUnit])[] = [
  [here(`\\[in_i'hg\\]|${inches} ?(?:of )?${mercury}${unitEnd}`), 'inHg'],
  [here(`\\[in_i'h2o\\]|${inches} ?(?:of )?${column}${unitEnd}|iw[cg]${unitEnd}`), 'inH2O'],
  [here(`${millimeters} ?(?:of )?${column}${unitEnd}`), 'mmH2O'],
  [here(`${columnAlone}${unitEnd}`), 'inH2O'],
  [here(`(?:hpa|hectopascals?)${unitEnd}`), 'hPa'],
  [here(`(?:kpa|kilopascals?)${unitEnd}`), 'kPa'],
  [here(`(?:mbars?|mb|millibars?)${unitEnd}`), 'mbar'],
  [here(`(?:pa|pascals?)${unitEnd}`), 'Pa'],
  [
    here(
      `(?:\\[psi\\]|psi[gd]?${unitEnd}|p\\.s\\.i${unitEnd}|lbf?${dot} ?/ ?(?:sq${dot} ?in|in)${dot}(?:²|2|\\^2)?${unitEnd})`,
    ),
    'psi',
  ],
]

/** An inch mark or word alone: an inch of water when it follows a number, else an ordinary word. */
export const bareInches: RegExp = here(`in(?:ch(?:es)?)?${unitEnd}|"`)

/** Units of other things, and of pressures that are not kept here: a number before one is no rating. */
export const foreignUnits: RegExp = here(
  `(?:v|vac|vdc|volts?|va|hz|amps?|ma|kw|watts?|ohms?|rpm|cfm|ft|feet|deg|btu(?:/?hr?)?|mbh|sec(?:onds?)?|minutes?|ppm|${[
    'bars?',
    'torr',
    'atm',
    'mpa',
    'dapa',
    'psia',
    'psf',
    'oz',
    'mm ?(?:of )?hg',
    'cm ?(?:of )?(?:h2o|w\\.?c)',
    '[mc]m',
  ].join('|')})${unitEnd}|° ?[fc]?${unitEnd}|Ω`,
)

export const percent: RegExp = here('%|percent')
