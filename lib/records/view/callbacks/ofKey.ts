/** What a map holds for a key; where it holds nothing yet, something made for it, which it holds from then on. */
export function ofKey<Key, Held>(map: Map<Key, Held>, key: Key, make: () => Held): Held {
  const known = map.get(key)
  if (known !== undefined) return known
  const made = make()
  map.set(key, made)
  return made
}
