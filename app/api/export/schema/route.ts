import { documentSchema } from '@/lib/server/exchange/documentSchema'
import { download } from '@/lib/server/exchange/download'
import { schemaFileName } from '@/lib/server/exchange/logDocument'
import { requireRole } from '@/lib/server/people/session'

/** The JSON Schema of the exported log. */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request, 'manager')
  if (person instanceof Response) return person
  return download(JSON.stringify(documentSchema(), undefined, 2), schemaFileName, 'application/schema+json')
}
