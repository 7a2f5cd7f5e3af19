import { spawnSync } from 'node:child_process'
import { browserPath } from './browser'

/**
 * Everything that must hold, one step after the other; the first failure ends it. `--without-browser` leaves the
 * browser tests out, and says so: without that flag a missing browser is a failure, never a skip.
 */
const withoutBrowser = process.argv.includes('--without-browser')

if (!withoutBrowser && browserPath() === undefined) {
  console.error(
    'No browser was found, so the browser tests cannot run. Install Chromium, or name one in CHROMIUM, ' +
      'or leave these tests out on purpose: npm test -- --without-browser',
  )
  process.exit(1)
}

const steps: [words: string, command: string, args: string[]][] = [
  ['Types', 'tsc', ['--noEmit']],
  ['Lint and format', 'biome', ['check', '--config-path=.config']],
  ['Import arrows', 'node', ['tests/arrows.mjs']],
  ['Unused files, exports and packages', 'knip', ['--no-progress']],
  [
    withoutBrowser ? 'Tests without the browser' : 'Tests',
    'vitest',
    [
      'run',
      '--config',
      '.config/vitest.config.ts',
      ...(withoutBrowser ? ['--project', 'node', '--project', 'dom'] : []),
    ],
  ],
]

for (const [words, command, args] of steps) {
  console.log(`\n── ${words}`)
  const program = command === 'node' ? process.execPath : `node_modules/.bin/${command}`
  const { status } = spawnSync(program, args, { stdio: 'inherit', shell: process.platform === 'win32' })
  if (status !== 0) {
    console.error(`${words}: failed.`)
    process.exit(status ?? 1)
  }
}
if (withoutBrowser) console.log('The browser tests were left out, as asked.')
