// Builds the pages, and beside the files that they load the same ones compressed by brotli. That takes a while at its
// best quality, so it is done once a build and not by each server that starts.
import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { brotliCompressSync, constants } from 'node:zlib'

const root = path.resolve(import.meta.dirname, '../../..')

/** Writes the brotli form of each script and style sheet of a folder into another, under the same name. */
export function compressFiles(from, into) {
  rmSync(into, { recursive: true, force: true })
  for (const file of readdirSync(from, { recursive: true })) {
    if (!/\.(js|css)$/.test(file)) continue
    const bytes = readFileSync(path.join(from, file))
    mkdirSync(path.dirname(path.join(into, file)), { recursive: true })
    writeFileSync(path.join(into, file), brotliCompressSync(bytes, { params: bestFor(bytes) }))
  }
}

const bestFor = (bytes) => ({
  [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
  [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
  [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
})

if (process.argv[1] && realpathSync(process.argv[1]) === import.meta.filename) {
  const next = path.join(root, 'node_modules/next/dist/bin/next')
  const { status } = spawnSync(process.execPath, [next, 'build'], { cwd: root, stdio: 'inherit' })
  if (status !== 0) process.exit(status ?? 1)
  compressFiles(path.join(root, '.next/static'), path.join(root, '.next/brotli'))
}
