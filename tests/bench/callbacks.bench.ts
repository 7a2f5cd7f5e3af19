import { fork } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'

export const name = 'callbacks'

/** In a process of its own: React draws as fast as it does for people only where it was started for production. */
export async function run(print: (line: string) => void): Promise<void> {
  const child = fork(path.join(import.meta.dirname, 'callbacks.child.ts'), {
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, NODE_ENV: 'production' },
  })
  child.on('message', (line) => print(String(line)))
  const [code] = await once(child, 'exit')
  if (code !== 0) throw new Error(`The child of the benchmark ended with ${code}`)
}
