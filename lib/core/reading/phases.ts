import type { SwitchKind } from '@/lib/core/vocabulary'
import type { ClosesWhen } from './decide'
import type { ReadingPhase } from './types'

/** After light-off the gas is hot and thin: what is read then answers "will it stay on?". */
export const isHot = (phase: ReadingPhase): boolean => phase === 'after light-off' || phase === 'steady hot'

/** A switch that opens on rise is closed below its numbers, every other kind above them. */
export const closesWhen = (kind: SwitchKind): ClosesWhen => (kind === 'opens on rise' ? 'too low' : 'enough')
