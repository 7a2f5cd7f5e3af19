import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { codeReaderAt, labelReaderAt } from '@/lib/device/readers/addresses'
import { buildId } from '../buildId'
import { offlinePages } from '../device/offlinePages'

/** The service worker, with the pages and files of this build written into it. */
export function GET(): Response {
  const readers = [codeReaderAt, labelReaderAt]
  const settings = { version: buildId(), pages: offlinePages, files: filesOf(), readers }
  const worker = readFileSync(path.resolve('app/sw.js/worker.js'), 'utf8')
  return new Response(`const settings = ${JSON.stringify(settings)}\n\n${worker}`, {
    headers: {
      'content-type': 'text/javascript; charset=utf-8',
      // Asked for anew each time: an old worker would keep an old program for ever.
      'cache-control': 'no-cache',
    },
  })
}

/** Every file that the pages of this build load, by its address. */
const filesOf = (): string[] =>
  readdirSync(path.resolve('.next/static'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.map'))
    .map((entry) => path.relative(path.resolve('.next/static'), path.join(entry.parentPath, entry.name)))
    .map((file) => `/_next/static/${file.split(path.sep).map(encodeURIComponent).join('/')}`)
    .sort()
