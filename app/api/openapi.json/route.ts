import { openApiDocument } from '@/lib/server/api/openApi'

/** What office programs can ask, as an OpenAPI document. It holds nobody's data, so anybody may read it. */
export function GET(): Response {
  return Response.json(openApiDocument(), { headers: { 'cache-control': 'no-store' } })
}
