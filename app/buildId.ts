import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'

/** The name of the build that this server serves; `development` while there is none. */
export function buildId(): string {
  const file = path.resolve('.next/BUILD_ID')
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : 'development'
}
