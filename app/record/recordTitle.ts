/** What a record is called in a list or a link: its own name, or its source, never a number; else its kind. */
export function recordTitle(kind: string, body: Record<string, unknown>): string {
  const named = body.name ?? body.partNumber ?? body.siteLabel ?? body.source ?? body.printed
  return typeof named === 'string' ? `${kind} ${named}` : kind
}
