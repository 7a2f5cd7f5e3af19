// Makes a fresh clone ready to run, and keeps it ready: installs, generates and builds only what has changed since
// the last time. It runs before anything is installed, so it uses nothing but Node itself.
//
//   node lib/server/prepare.mjs [--build] [--then FILE [arguments…]]
import { spawn } from 'node:child_process'
import { realpathSync, rmSync } from 'node:fs'
import { constants } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { readStamp, writeStamp } from './prepare/files.mjs'
import { runStep, stepsFor } from './prepare/steps.mjs'
import { withLock } from './prepare/withLock.mjs'

const oldestNode = [20, 19]

/** Whether a Node version such as 'v20.19.3' is new enough. */
export function isNodeNewEnough(version) {
  const [major = 0, minor = 0] = version.replace('v', '').split('.').map(Number)
  return major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1])
}

/** Does the steps that are not done yet. One run at a time does them; another waits, and finds them done. */
export async function prepare(root, options, run = runStep, say = console.log) {
  const steps = stepsFor(root, options)
  if (!steps.every((step) => step.isDone())) {
    const work = () => {
      for (const step of steps) doStep(root, step, run, say)
    }
    await withLock(path.join(root, '.prepared', 'lock'), work, say)
  }
  // Found installed by npm's own list: the stamp tells it faster the next time.
  const [install] = steps
  if (readStamp(install.stamp) !== install.hash()) writeStamp(install.stamp, install.hash())
}

function doStep(root, step, run, say) {
  if (step.isDone()) return
  // The stamp goes first, so that a step which is broken off is done again. The hash is taken before the work:
  // what changes meanwhile makes the step due again.
  rmSync(step.stamp, { force: true })
  const hash = step.hash()
  const begunAt = Date.now()
  say(`${step.say} …`)
  run(root, step)
  writeStamp(step.stamp, hash)
  say(`  done in ${Math.round((Date.now() - begunAt) / 1000)} s`)
}

/** Runs a TypeScript file last, passes signals on to it, and ends the way it ends. */
function runThen(root, file, args) {
  const child = spawn(process.execPath, ['--import', 'tsx', file, ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1' },
  })
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal))
  child.on('exit', (code, signal) => process.exit(signal ? 128 + constants.signals[signal] : (code ?? 1)))
}

async function main(args) {
  if (!isNodeNewEnough(process.version)) {
    console.error(
      `Inchwater needs Node ${oldestNode.join('.')} or newer. This is Node ${process.version.slice(1)}.`,
    )
    process.exit(1)
  }
  const root = path.resolve(import.meta.dirname, '../..')
  const at = args.includes('--then') ? args.indexOf('--then') : args.length
  const [file, ...rest] = args.slice(at + 1)
  try {
    await prepare(root, { build: args.slice(0, at).includes('--build') })
  } catch (error) {
    console.error(error.message)
    process.exit(1)
  }
  if (file) runThen(root, file, rest)
}

const isCommand = process.argv[1] && import.meta.url === pathToFileURL(realpathSync(process.argv[1])).href
if (isCommand) await main(process.argv.slice(2))
