/**
 * How many cases there are, said above the list.
 * @param shown how many are listed, `matching` how many pass the filters, `all` how many there are
 * @example countWords({ shown: 50, matching: 137, all: 500 }) // 'The first 50 of 137 that match, of 500 cases'
 */
export function countWords({ shown, matching, all }: Record<'shown' | 'matching' | 'all', number>): string {
  const cases = all === 1 ? '1 case' : `${all} cases`
  if (matching === all) return shown < all ? `The first ${shown} of ${cases}` : cases
  return shown < matching
    ? `The first ${shown} of ${matching} that match, of ${cases}`
    : `${matching} of ${cases}`
}
