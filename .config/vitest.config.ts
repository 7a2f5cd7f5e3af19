import path from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'

const root = path.resolve(import.meta.dirname, '..')
const resolve = { alias: { '@': root } }
// Two files at a time, also where there are but two processors: the tests of servers wait more than they compute.
const alike = { setupFiles: [path.join(root, 'tests/setup/noStrayErrors.ts')], testTimeout: 30_000, hookTimeout: 60_000, maxWorkers: 2 }

/** Three projects: `node` (core, records, server), `dom` (components) and `browser` (a real Chromium). */
export default defineConfig({
  root,
  test: {
    reporters: ['default', path.join(root, 'tests/setup/plainLine.ts')],
    projects: [
      {
        root,
        resolve,
        test: { name: 'node', environment: 'node', include: ['tests/**/*.test.ts'], ...alike },
      },
      {
        root,
        resolve,
        plugins: [react()],
        test: { name: 'dom', environment: 'jsdom', globals: true, include: ['tests/**/*.test.tsx'], ...alike },
      },
      {
        root,
        resolve,
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/e2e/**/*.browser.ts'],
          globalSetup: [path.join(root, 'tests/setup/demoServer.ts')],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
})
