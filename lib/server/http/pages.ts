import type { IncomingMessage, ServerResponse } from 'node:http'
import path from 'node:path'
import { compressedFiles } from './compressed'
import type { Listening } from './listen'

const root = path.resolve(import.meta.dirname, '../../..')

/** The pages and routes under app/, ready to answer. */
export type Pages = {
  handle(request: IncomingMessage, response: ServerResponse): Promise<void>
  close(): Promise<void>
}

/** Readies the pages: those that were built, or in development those that are compiled as they are asked for. */
export async function openPages(dev: boolean, { server, port }: Listening): Promise<Pages> {
  // Read by React and by the pages when they are loaded, so set before they are.
  Object.assign(process.env, { NODE_ENV: dev ? 'development' : 'production', NEXT_TELEMETRY_DISABLED: '1' })
  const { default: next } = await import('next')
  const app = next({ dev, dir: root, hostname: 'localhost', port, httpServer: server, quiet: true })
  await app.prepare()
  const page = app.getRequestHandler()
  if (dev) return { handle: page, close: () => app.close() }
  const file = compressedFiles(path.join(root, '.next/brotli'))
  return {
    handle: async (request, response) => {
      if (!(await file(request, response))) await page(request, response)
    },
    close: () => app.close(),
  }
}
