import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { hashOf, readStamp } from './files.mjs'

export const installStamp = (root) => path.join(root, 'node_modules', '.inchwater-lock')

/** Whether node_modules holds what package-lock.json asks for: told by our stamp, else by npm's own list of it. */
export function isInstalled(root) {
  if (readStamp(installStamp(root)) === hashOf(root, 'package-lock.json')) return true
  const npmList = path.join(root, 'node_modules', '.package-lock.json')
  if (!existsSync(npmList)) return false
  const installed = packagesOf(npmList)
  const asked = packagesOf(path.join(root, 'package-lock.json'))
  // A package for another kind of machine is in the lock file but not installed here.
  const fits = ([at, entry]) =>
    at === '' || (installed[at] ? installed[at].version === entry.version : entry.optional)
  return Object.entries(asked).every(fits) && Object.keys(installed).every((at) => at in asked)
}

const packagesOf = (file) => JSON.parse(readFileSync(file, 'utf8')).packages
