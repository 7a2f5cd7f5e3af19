import type { AdviceCode } from './advice'
import type { Reading } from './types'

const looks = ['look-at-the-terminals', 'clear-hose-and-port'] as const

/**
 * Which parts of the air path can make a reading at this tap too low, looks before tools and tools before taking
 * apart. On an inducer-inlet or collector tap an outlet-side restriction or an inlet-side leak lowers the suction and
 * an inlet-side restriction raises it (service manual of a two-stage condensing furnace). Across two ports either
 * side lowers the differential (service literature on a differential switch). The order is common practice, no
 * published source.
 */
export function airPathOf(reading: Pick<Reading, 'between' | 'tap'>): AdviceCode[] {
  if (reading.between === 'two ports')
    return [
      ...looks,
      'check-drain-and-trap',
      'read-each-port-to-the-room',
      'open-the-vent-for-a-moment',
      'open-the-intake-for-a-moment',
      'check-door-and-box-seals',
      'check-inducer-speed-and-volts',
      'check-the-exchanger-last',
    ]
  const drainAndVent = ['check-drain-and-trap', 'open-the-vent-for-a-moment'] as const
  switch (reading.tap) {
    case 'inducer inlet':
    case 'collector box':
      return [...looks, ...drainAndVent, 'look-for-a-leak-before-the-tap', 'check-inducer-speed-and-volts']
    case 'burner box':
      return [
        ...looks,
        ...drainAndVent,
        'check-door-and-box-seals',
        'check-inducer-speed-and-volts',
        'check-the-exchanger-last',
      ]
    case 'vent side':
      return [
        ...looks,
        'check-the-vent-is-whole',
        'open-the-intake-for-a-moment',
        'check-inducer-speed-and-volts',
        'check-the-exchanger-last',
      ]
    case 'not stated':
      return [
        ...looks,
        'follow-the-hose',
        ...drainAndVent,
        'open-the-intake-for-a-moment',
        'look-for-a-leak-before-the-tap',
        'check-inducer-speed-and-volts',
        'check-the-exchanger-last',
      ]
  }
}
