import type { Reporter, TestModule } from 'vitest/node'

/** Closes a run with one plain line, `N passed, N failed, N skipped`, that any reader of a build can find. */
export default class PlainLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]) {
    const count = { passed: 0, failed: errors.length, skipped: 0, pending: 0 }
    for (const module of modules) {
      for (const test of module.children.allTests()) count[test.result().state]++
      if (module.errors().length > 0) count.failed++
    }
    console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped`)
  }
}
