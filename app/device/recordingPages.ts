/**
 * The pages on which something can be said without reading the team file: they stay open when it is out of sight, because
 * recording never asks for a sign-in. What was said on this device and is not sent yet is there all the same.
 */
export const recordingPages: readonly string[] = [
  '/ask',
  '/case',
  '/case/end',
  '/case/shut-down',
  '/cases/new',
  '/found-fitted',
  '/furnace/add',
  '/gauges/add',
  '/preferences',
  '/report',
  '/waiting',
]
