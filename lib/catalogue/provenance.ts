/** Where an entry of the catalogue comes from. Everything without a named source is said to be just that. */
export const commonPractice = 'common practice, no published source'

/** Slope of a condensate drain: 1 in 96, which is 1/8 in. in 12 in. */
export const drainFallSource =
  'International Code Council, Building Safety Journal, “Code Corner: 2024 IFGC Chapter 3”, s. 307.2'

/** Slope of a vent back to the furnace: 1/4 in. in a foot. */
export const ventFallSource = 'condensing-furnace installation manuals, connections near the furnace'

/** Which way both readings move tells the side of the restriction. */
export const twoPortSource = 'service literature of a sealed-combustion furnace, differential-switch chart'

/** A restriction before the inducer raises its suction; one behind it, or a leak before it, lowers it. */
export const suctionSideSource = 'service manual of a two-stage condensing furnace'

export const flueCoSource = '80 % furnace installation manual, combustion check'

export const inletPlateSource = '80 % furnace installation manual, inlet restrictor'

export const fanLawSource = 'Process Heating, “Fan laws and formulas”'

export const furnaceTiltSource =
  'service literature of a single-stage condensing furnace, pressure-switch troubleshooting table'

export const gasInputSource = 'installation manual of a two-stage 80 % furnace, clocking the meter'

export const rollOutSource = 'training article on roll-out switches (2018)'
