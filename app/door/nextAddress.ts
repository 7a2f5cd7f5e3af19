/**
 * Where to go after signing in: an address of this site only, whatever the link said. Anything else leads to Find.
 * The browser's own reading decides, because it drops tabs and line ends that a pattern would trip over.
 *
 * @param origin this site's own, for instance `https://inchwater.example`
 * @example nextAddress('/setpoint?position=1', origin) // the same
 * @example nextAddress('//elsewhere.example', origin) // '/'
 */
export function nextAddress(asked: string | null, origin: string): string {
  if (asked === null || !URL.canParse(asked, origin)) return '/'
  const address = new URL(asked, origin)
  if (address.origin !== origin || address.pathname.startsWith('/sign-in')) return '/'
  return address.pathname + address.search
}
