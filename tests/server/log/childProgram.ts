import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { symlinkSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'

type Esbuild = {
  buildSync(options: {
    entryPoints: string[]
    outfile: string
    bundle: true
    platform: 'node'
    format: 'esm'
    external: string[]
    banner: { js: string }
    tsconfig: string
  }): unknown
}

const root = path.resolve(import.meta.dirname, '../../..')

/** @returns the file to run with node, for `startWriter` */
export const buildWriter = (folder: string): string =>
  buildProgram(folder, fileURLToPath(new URL('./writer.child.ts', import.meta.url)))

/**
 * Makes one plain file of a program, so that dozens of them start in the time that one would take to compile it. The
 * compiler is the one that tsx brings along.
 *
 * @param folder one of its own
 * @returns the file to run with node
 */
export function buildProgram(folder: string, entry: string): string {
  const require = createRequire(import.meta.url)
  const { buildSync } = createRequire(require.resolve('tsx'))('esbuild') as Esbuild
  const outfile = path.join(folder, `${path.basename(entry, '.ts')}.mjs`)
  buildSync({
    entryPoints: [entry],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    // What holds compiled code of its own.
    external: ['better-sqlite3', '@node-rs/argon2', 'sharp'],
    // Some packages ask for Node's own modules the old way.
    banner: {
      js: "import { createRequire as from } from 'node:module'; const require = from(import.meta.url);",
    },
    tsconfig: path.join(root, 'tsconfig.json'),
  })
  symlinkSync(path.join(root, 'node_modules'), path.join(folder, 'node_modules'), 'junction')
  return outfile
}

export type Writer = {
  child: ChildProcess
  /** The batches that it began, and those that were acknowledged to it. */
  begun: Set<number>
  ended: Set<number>
  ready: Promise<void>
  /** Lets it write. */
  go(): void
  /** Its end, once everything that it said was read: how it exited, or the signal that killed it. */
  over: Promise<number | NodeJS.Signals | null>
}

export function startWriter(program: string, file: string, name: string, size: number, count = 0): Writer {
  const child = spawn(process.execPath, [program, file, name, String(size), String(count)], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const begun = new Set<number>()
  const ended = new Set<number>()
  const lines = createInterface(child.stdout)
  const ready = new Promise<void>((resolve) => {
    lines.on('line', (line) => {
      const [word, batch] = line.split(' ')
      if (word === 'ready') resolve()
      if (word === 'begin') begun.add(Number(batch))
      if (word === 'end') ended.add(Number(batch))
    })
  })
  const over = Promise.all([once(child, 'exit'), once(lines, 'close')]).then(
    ([[code, signal]]) => (code ?? signal) as number | NodeJS.Signals | null,
  )
  return { child, begun, ended, ready, go: () => void child.stdin.write('go\n'), over }
}
