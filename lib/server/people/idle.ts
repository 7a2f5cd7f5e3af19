/**
 * How long a sign-in may lie unused, in days: INCHWATER_IDLE_DAYS, else 30, so that a technician's phone stays
 * signed in through a quiet month.
 *
 * @throws RangeError when the setting is no number from 1 to 400
 */
export function idleDays(setting = process.env.INCHWATER_IDLE_DAYS): number {
  if (setting === undefined || setting === '') return 30
  const days = Number(setting)
  if (!(days >= 1 && days <= 400))
    throw new RangeError('INCHWATER_IDLE_DAYS is a number of days from 1 to 400.')
  return days
}
