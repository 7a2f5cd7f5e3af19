/**
 * Where to go after signing in: an address of this site only, whatever the link said. Anything else leads to Find.
 * @example nextAddress('/setpoint?position=1') // the same
 * @example nextAddress('//elsewhere.example') // '/'
 */
export const nextAddress = (asked: string | null): string =>
  asked !== null && /^\/(?![/\\])/.test(asked) && !asked.startsWith('/sign-in') ? asked : '/'
