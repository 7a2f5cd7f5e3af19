import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { refuse } from '@/lib/server/http/answers'
import { readerFiles } from '../readerFiles'

/**
 * The programs that read codes and labels, from this server and no other. They are open-source programs without
 * anybody’s data, so nobody has to sign in for them and every cache may keep them.
 */
export async function GET(request: Request): Promise<Response> {
  const file = readerFiles.get(new URL(request.url).pathname)
  if (file === undefined)
    return refuse(404, 'no-such-file', 'There is no such file here. Load the page again and repeat it.')
  return new Response(new Uint8Array(await readFile(path.resolve(file.from))), {
    headers: { 'content-type': file.type, 'cache-control': 'public, max-age=31536000, immutable' },
  })
}
