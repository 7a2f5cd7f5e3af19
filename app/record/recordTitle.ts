/** What a record is called in a list or a link: its own name where it has one, else its kind. */
export function recordTitle(kind: string, body: Record<string, unknown>): string {
  const named = body.name ?? body.partNumber ?? body.siteLabel ?? body.asWritten ?? body.printed
  return typeof named === 'string' ? `${kind} ${named}` : kind
}
