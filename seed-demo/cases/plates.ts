import type { Range } from '../catalogue'
import { drawn, pick } from '../drawing'
import { makers } from '../makers'
import { type Branch, branches } from '../names'
import { streets } from './streets'

/** Hands out one address after the other, house numbers with gaps. */
export function addressesIn(branch: Branch): () => string {
  const names = streets[branch]
  let given = 0
  return () => {
    const number = 2 + 3 * Math.floor(given / names.length) + (given % 4)
    return `${names[given++ % names.length]!} ${number}`
  }
}

/** What is on file of an invented furnace: its address and what its plate prints. */
export function plateOf(
  random: () => number,
  branch: Branch,
  siteLabel: string,
  range: Range,
  revision: string | undefined,
) {
  const { family, size } = range
  const isCondensing = family.heat === 'condensing'
  return {
    siteLabel,
    branch,
    model: family.printed(size),
    ...(revision === undefined ? {} : { revision }),
    serial: `${makers[range.maker].name[0]}${Math.floor(drawn(random, [1300, 2300]))}-${Math.floor(drawn(random, [1000, 9999]))}`,
    elevationMetres: Math.round(branches[branch].elevationMetres + drawn(random, [-18, 26])),
    fuel: family.fuel === 'either' ? ('natural gas' as const) : family.fuel,
    ventLengthMetres: Math.round(drawn(random, isCondensing ? [3, 17] : [4, 9]) * 2) / 2,
    ventMaterial: isCondensing ? pick(random, ['plastic, 2 in.', 'plastic, 3 in.'] as const) : 'steel',
  }
}
