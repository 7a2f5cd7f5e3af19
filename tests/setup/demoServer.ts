import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { TestProject } from 'vitest/node'
import { startServerProcess } from './serverProcess'

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of a server that holds the demo company, one for all browser tests. */
    demoUrl: string
  }
}

/** Loads the demo company into a folder of its own and serves it while the browser tests run. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const data = mkdtempSync(path.join(tmpdir(), 'inchwater-demo-'))
  const loaded = spawnSync(process.execPath, ['--import', 'tsx', 'tests/setup/loadDemoInto.ts', data], {
    cwd: path.resolve(import.meta.dirname, '../..'),
    encoding: 'utf8',
  })
  if (loaded.status !== 0) throw new Error(`The demo could not be loaded.\n${loaded.stdout}${loaded.stderr}`)
  const server = await startServerProcess(data)
  project.provide('demoUrl', server.url)
  return async () => {
    await server.stop()
    rmSync(data, { recursive: true, force: true })
  }
}
