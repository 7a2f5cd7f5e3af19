import { SqliteError } from 'better-sqlite3'
import type { Problem } from '@/lib/core/result'
import { LogBusy } from './writeLock'

/**
 * What to tell a sender whose whole batch could not be stored, when that passes or somebody can put it right;
 * undefined for anything else, which is a fault of the program.
 */
export function whyNotStored(cause: unknown): Problem | undefined {
  if (cause instanceof LogBusy) {
    return {
      code: 'log-busy',
      message: 'The log was busy for ten seconds. Nothing is lost; what waits is sent again.',
    }
  }
  if (cause instanceof SqliteError && /^SQLITE_(FULL|IOERR|READONLY)/.test(cause.code)) {
    return {
      code: 'disk',
      message:
        'The server can’t write to its disk. Nothing is lost; tell whoever runs the server to free space there.',
    }
  }
  return undefined
}
