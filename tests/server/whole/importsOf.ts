import { existsSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '../../..')
const ends = ['', '.ts', '.tsx', '/index.ts', '/index.tsx']
const imported = /\b(?:from|import)[\s(]*['"]((?:@\/|\.)[^'"]*)['"]/g

/**
 * Every file of ours that a file imports, directly or through others, by its path from the root; itself included.
 * Imports of types count too: better one file too many.
 *
 * @throws RangeError when a file that is imported is not there
 */
export function importsOf(file: string, reached = new Set<string>()): Set<string> {
  const own = path.relative(root, file).split(path.sep).join('/')
  if (reached.has(own)) return reached
  reached.add(own)
  if (!/\.[jt]sx?$/.test(file)) return reached
  for (const [, named = ''] of readFileSync(file, 'utf8').matchAll(imported)) {
    importsOf(found(named.replace(/^@\//, `${root}/`), file), reached)
  }
  return reached
}

function found(named: string, from: string): string {
  const target = path.resolve(path.dirname(from), named)
  const file = ends.map((end) => target + end).find((one) => existsSync(one) && statSync(one).isFile())
  if (file === undefined) throw new RangeError(`importsOf: ${from} imports ${named}, which is not there`)
  return file
}
