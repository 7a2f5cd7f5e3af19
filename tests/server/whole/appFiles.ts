import { readdirSync } from 'node:fs'
import path from 'node:path'

const app = path.resolve(import.meta.dirname, '../../../app')
const files = readdirSync(app, { recursive: true, encoding: 'utf8' }).map((file) => path.join(app, file))

/** A page or route under app/: its address, e.g. `/api/people/[id]/role`, and the file that answers there. */
export type AppFile = { address: string; file: string }

/** Every page, or every route, by its address: Next.js finds them by their names in the folders, and so does this. */
export function appFiles(what: 'page' | 'route'): AppFile[] {
  return files
    .filter((file) => new RegExp(`^${what}\\.[jt]sx?$`).test(path.basename(file)))
    .map((file) => ({ address: addressOf(path.dirname(file)), file }))
    .sort((a, b) => (a.address < b.address ? -1 : 1))
}

const methods = ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS'] as const

export type Handler = {
  method: (typeof methods)[number]
  address: string
  handle(request: Request, context: { params: Promise<Record<string, string>> }): Promise<Response>
}

/** Every method that some route answers, by its name and address, e.g. `POST /api/people/[id]/role`. */
export async function appHandlers(): Promise<Map<string, Handler>> {
  const found = await Promise.all(
    appFiles('route').map(async ({ address, file }) => {
      const route = (await import(file)) as Partial<Record<Handler['method'], Handler['handle']>>
      return methods.flatMap((method) => {
        const handle = route[method]
        return handle === undefined ? [] : [{ method, address, handle }]
      })
    }),
  )
  return new Map(found.flat().map((handler) => [`${handler.method} ${handler.address}`, handler]))
}

/** The layouts that stand around a page, outermost first. */
export const layoutsAround = (page: AppFile): string[] =>
  files.filter(
    (file) =>
      path.basename(file) === 'layout.tsx' && page.file.startsWith(`${path.dirname(file)}${path.sep}`),
  )

/** A folder in round brackets groups pages and has no part in their address. */
const addressOf = (folder: string): string =>
  `/${path
    .relative(app, folder)
    .split(path.sep)
    .filter((part) => !/^\(.*\)$/.test(part))
    .join('/')}`
