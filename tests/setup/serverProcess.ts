import { type ChildProcess, spawn } from 'node:child_process'
import net from 'node:net'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '../..')

/** How long a start may take before it counts as failed, in milliseconds. */
const patience = 60_000

export type ServerProcess = {
  url: string
  /** All that it printed so far. */
  output(): string
  /** Ends it as a person would, or with SIGKILL as a crash does. */
  stop(signal?: 'SIGTERM' | 'SIGKILL'): Promise<void>
}

export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = net.createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as net.AddressInfo
      probe.close(() => resolve(port))
    })
  })

/** Starts the built server in a process of its own, on a free port, with the data folder given. */
export async function startServerProcess(
  data: string,
  environment: Readonly<Record<string, string>> = {},
): Promise<ServerProcess> {
  const port = Number(environment.PORT ?? (await freePort()))
  const child: ChildProcess = spawn(process.execPath, ['--import', 'tsx', 'lib/server/start.ts'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...process.env,
      NODE_ENV: 'production',
      NEXT_TELEMETRY_DISABLED: '1',
      ...environment,
      INCHWATER_DATA: data,
      PORT: String(port),
    },
  })
  let printed = ''
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const ready = new Promise<string>((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new Error(`The server did not start in time.\n${printed}`)),
      patience,
    )
    const listen = (chunk: Buffer) => {
      printed += chunk.toString()
      const address = /Inchwater is ready at (\S+)/.exec(printed)?.[1]
      if (address === undefined) return
      clearTimeout(timer)
      resolve(address)
    }
    child.stdout?.on('data', listen)
    child.stderr?.on('data', listen)
    child.once('exit', (code) => {
      clearTimeout(timer)
      reject(new Error(`The server ended with ${code}.\n${printed}`))
    })
  })
  const url = await ready.catch((cause) => {
    child.kill('SIGKILL')
    throw cause
  })
  return {
    url,
    output: () => printed,
    async stop(signal = 'SIGTERM') {
      child.kill(signal)
      await gone
    },
  }
}
