import type { Instrument, Reading, ReadingSettings } from './types'

const magnitude = (name: string, pascals: number | undefined): void => {
  if (pascals !== undefined && !(pascals >= 0 && pascals < Number.POSITIVE_INFINITY))
    throw new RangeError(
      `compareReading requires ${name} as a magnitude of zero or more, its direction in sense, not ${pascals}`,
    )
}

const positive = (name: string, figure: number): void => {
  if (!(figure > 0 && figure < Number.POSITIVE_INFINITY))
    throw new RangeError(`compareReading requires ${name} above zero, not ${figure}`)
}

/**
 * A caller's mistakes: no sample, a signed or endless pressure, a gauge without span or step, settings that would
 * make a reading look certain.
 * @throws RangeError naming the first of them
 */
export function checkReading(reading: Reading, instrument: Instrument, settings: ReadingSettings): void {
  if (reading.samples.length === 0) throw new RangeError('compareReading requires at least one sample')
  for (const sample of reading.samples) magnitude('each sample', sample)
  magnitude('the lowest', reading.lowest)
  magnitude('the highest', reading.highest)
  if (reading.secondsWatched !== undefined && !(reading.secondsWatched >= 0))
    throw new RangeError('compareReading requires seconds watched of zero or more')
  positive('the gauge’s span', instrument.spanPascals)
  positive('the gauge’s resolution', instrument.resolutionPascals)
  positive('the usual scatter', settings.usualScatterPascals)
  magnitude('the assumed tolerance', settings.assumedTolerancePascals)
}
