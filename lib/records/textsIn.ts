/**
 * Every text that stands in a body, at any depth: among them the ids of the records that it names. Whoever asks looks
 * for ids that he knows, so that this needs no list of the fields that hold one.
 */
export function textsIn(body: unknown): string[] {
  if (typeof body === 'string') return [body]
  return typeof body === 'object' && body !== null ? Object.values(body).flatMap(textsIn) : []
}
