import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/** SHA-256 over the names and contents of files, and of everything in folders. What is missing counts as missing. */
export function hashOf(root, ...names) {
  const hash = createHash('sha256')
  for (const file of names.flatMap((name) => filesIn(root, name))) {
    const full = path.join(root, file)
    hash
      .update(`${file}\0`)
      .update(existsSync(full) ? readFileSync(full) : 'missing')
      .update('\0')
  }
  return hash.digest('hex')
}

function filesIn(root, name) {
  const full = path.join(root, name)
  if (!existsSync(full) || !statSync(full).isDirectory()) return [name]
  return readdirSync(full)
    .sort()
    .flatMap((entry) => filesIn(root, path.join(name, entry)))
}

/** What a stamp file says, or undefined. A stamp holds the hash of what a step was last done with. */
export const readStamp = (file) => (existsSync(file) ? readFileSync(file, 'utf8') : undefined)

export function writeStamp(file, stamp) {
  mkdirSync(path.dirname(file), { recursive: true })
  writeFileSync(file, stamp)
}
