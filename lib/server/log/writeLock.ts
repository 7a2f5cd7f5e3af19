import { setTimeout as sleep } from 'node:timers/promises'
import type { LogTables } from './tables'

/** Nobody could write for the whole of the patience; nothing was changed. */
export class LogBusy extends Error {
  override name = 'LogBusy'
}

/** How long to try for the lock, in milliseconds. */
const patienceMs = 10_000

/**
 * Does work that writes, in one transaction: all of it is in the log, or none. Others may hold the write lock, in
 * this process too (a transaction that waits for something else between two statements), so waiting must let the
 * event loop go on: short tries, spread by chance so that two who wait do not wait in step.
 *
 * @param jitter a number in [0, 1)
 * @throws LogBusy after ten seconds without the lock
 */
export async function underWriteLock<T>(tables: LogTables, jitter: () => number, work: () => T): Promise<T> {
  const startedMs = performance.now()
  // 1 to 2 ms, then 2 to 4, and so on, at most 20 to 40.
  for (let waitMs = 1; !tables.begin(); waitMs = Math.min(2 * waitMs, 20)) {
    if (performance.now() - startedMs > patienceMs) {
      throw new LogBusy('Another program kept the log locked for ten seconds.')
    }
    await sleep(waitMs * (1 + jitter()))
  }
  try {
    const done = work()
    tables.commit()
    return done
  } catch (cause) {
    tables.rollback()
    throw cause
  }
}
