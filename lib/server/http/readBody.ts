import type { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import { sentenceOf } from '../log/whatDoesNotFit'

/**
 * Reads a JSON body through its schema. What doesn't fit is told in the schema's own sentences. The length was
 * limited before, at the server's door.
 */
export async function readBody<Schema extends z.ZodType>(
  request: Request,
  schema: Schema,
): Promise<Result<z.infer<Schema>>> {
  let sent: unknown
  try {
    sent = await request.json()
  } catch (cause) {
    if (!(cause instanceof SyntaxError)) throw cause
    return failure('not-json', 'What was sent is not JSON. Load the page again and repeat it.')
  }
  const parsed = schema.safeParse(sent)
  if (parsed.success) return success(parsed.data)
  return failure('not-understood', [...new Set(parsed.error.issues.map(sentenceOf))].join(' '))
}
