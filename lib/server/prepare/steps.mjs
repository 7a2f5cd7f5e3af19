import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'
import { hashOf, readStamp } from './files.mjs'
import { installStamp, isInstalled } from './isInstalled.mjs'

const schema = ['prisma/schema', 'prisma/generate.mjs', 'package-lock.json']
const sources = ['app', 'lib', 'prisma/schema', 'next.config.ts', 'package-lock.json', 'tsconfig.json']

/**
 * What readies a clone, in order. Each step: what to say, the command, whether it is done, and the stamp file that
 * keeps the hash it was done with.
 */
export function stepsFor(root, { build }) {
  const install = {
    say: 'Installing packages (a minute or two the first time)',
    ...npm('ci', '--include=dev', '--no-audit', '--no-fund'),
    stamp: installStamp(root),
    hash: () => hashOf(root, 'package-lock.json'),
    isDone: () => isInstalled(root),
  }
  const generate = stamped(root, {
    say: 'Generating the database client',
    ...node('prisma/generate.mjs'),
    stamp: path.join(root, '.prepared', 'generated'),
    hash: () => hashOf(root, ...schema),
    product: 'prisma/generated',
  })
  const pages = stamped(root, {
    say: 'Building the pages (a minute or less)',
    ...node('lib/server/prepare/buildPages.mjs'),
    stamp: path.join(root, '.prepared', 'built'),
    hash: () => hashOf(root, ...sources),
    product: '.next/BUILD_ID',
  })
  return build ? [install, generate, pages] : [install, generate]
}

const stamped = (root, step) => ({
  ...step,
  isDone: () => existsSync(path.join(root, step.product)) && readStamp(step.stamp) === step.hash(),
})

const node = (...args) => ({ command: process.execPath, args, shell: false })

// Started by npm, the same npm is used, so that its settings hold. Otherwise a shell finds it, npm.cmd included.
function npm(...args) {
  const own = process.env.npm_execpath
  return own?.endsWith('.js') ? node(own, ...args) : { command: 'npm', args, shell: true }
}

/** Runs a step's command. @throws Error with all that the command printed when it fails */
export function runStep(root, step) {
  const { status, error, stdout, stderr } = spawnSync(step.command, step.args, {
    cwd: root,
    shell: step.shell,
    stdio: ['ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1' },
  })
  if (status !== 0)
    throw new Error(`${step.say}: this failed. ${error?.message ?? ''}\n${stdout ?? ''}${stderr ?? ''}`)
}
