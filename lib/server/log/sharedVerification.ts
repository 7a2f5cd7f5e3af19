import { setImmediate as nextTurn } from 'node:timers/promises'
import { dataFolder, theLog } from '../database'
import type { Verification } from './verify'

type Watch = (done: number, of: number) => void
type Run = { result: Promise<Verification>; watchers: Set<Watch> }

// On globalThis, because development reloads modules while a walk is under way.
const kept = globalThis as typeof globalThis & { inchwaterVerifications?: Map<string, Run> }
kept.inchwaterVerifications ??= new Map()

/**
 * Walks the chain once for everybody who asks meanwhile: it costs the server its work, and gives all of them the same
 * answer. Between two pages the walk lets everything else go on.
 *
 * @param watch told how far it is, until `leave` is called or it ends
 */
export function joinVerification(watch: Watch): { result: Promise<Verification>; leave(): void } {
  const folder = dataFolder()
  const run = kept.inchwaterVerifications!.get(folder) ?? begin(folder)
  run.watchers.add(watch)
  return { result: run.result, leave: () => void run.watchers.delete(watch) }
}

function begin(folder: string): Run {
  const watchers = new Set<Watch>()
  // From the next turn on, so that whoever asked first is told of the first step too.
  const result = nextTurn()
    .then(() =>
      theLog(folder).verify((done, of) => {
        for (const watch of watchers) watch(done, of)
      }),
    )
    .finally(() => kept.inchwaterVerifications!.delete(folder))
  const run = { result, watchers }
  kept.inchwaterVerifications!.set(folder, run)
  return run
}
