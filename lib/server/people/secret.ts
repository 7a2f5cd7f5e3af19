import { randomBytes } from 'node:crypto'
import { chmodSync, existsSync, linkSync, readFileSync, unlinkSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/**
 * The secret that signs session and device cookies: 256 random bits in `session-secret` in the data folder, made at
 * the first start and readable by the server's own account only. Removing the file signs everybody out.
 *
 * @throws Error when the file holds anything else than such a secret.
 */
export function sessionSecret(dataFolder: string): string {
  const file = path.join(dataFolder, 'session-secret')
  if (!existsSync(file)) makeOnce(file)
  chmodSync(file, 0o600)
  const secret = readFileSync(file, 'utf8').trim()
  if (!/^[\w-]{43}$/.test(secret)) {
    throw new Error(`${file} holds no session secret. Remove it and start again; everybody signs in anew.`)
  }
  return secret
}

// Written beside and then linked into place, which fails when the file exists: two processes that start together
// agree on one secret, and neither reads half of it.
function makeOnce(file: string): void {
  const draft = `${file}.${randomBytes(8).toString('hex')}`
  writeFileSync(draft, randomBytes(32).toString('base64url'), { flag: 'wx', mode: 0o600 })
  try {
    linkSync(draft, file)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  } finally {
    unlinkSync(draft)
  }
}
