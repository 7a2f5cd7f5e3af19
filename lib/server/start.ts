import { mkdirSync, realpathSync } from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { MigrationRefused, migrate } from '@/prisma/migrate'
import { databaseFile, dataFolder } from './database'
import { door } from './http/door'
import { CannotListen, type Listening, listen } from './http/listen'
import { openPages, type Pages } from './http/pages'
import { readTransport } from './http/transport'
import { makeSetUpCode } from './people/setUp'
import { store } from './people/store'
import { sweepSessions } from './people/sweepSessions'

export type StartOptions = {
  /** Where the team's data is; INCHWATER_DATA or ./data when not given. */
  folder?: string
  /** PORT or 3000 when not given; 0 takes any that is free. */
  port?: number
  dev?: boolean
}

export type Started = { address: string; port: number; stop(): Promise<void> }

/**
 * Opens a data folder: makes it, for this account alone, brings its database up to date, and has the rest of the
 * program use it. The server does it itself; a program that seeds does it first.
 *
 * @throws MigrationRefused when the database can't be brought up to this program
 */
export function openData(folder = dataFolder()): string {
  const opened = path.resolve(folder)
  mkdirSync(opened, { recursive: true, mode: 0o700 })
  process.env.INCHWATER_DATA = opened
  migrate(databaseFile(opened))
  return opened
}

/**
 * Starts the server: takes the port, opens the data, readies the pages. Requests that come before then wait.
 *
 * @throws CannotListen, MigrationRefused or RangeError, with a sentence for whoever started it
 * @example const { address, stop } = await startServer({ folder: 'data', port: 3000 })
 */
export async function startServer(options: StartOptions = {}): Promise<Started> {
  const { folder, port = portOf(process.env.PORT), dev = false } = options
  const transport = readTransport(process.env)
  let makeReady: (pages: Pages) => void = () => {}
  const ready = new Promise<Pages>((resolve) => {
    makeReady = resolve
  })
  const handler = door(transport, dev, async (request, response) => (await ready).handle(request, response))
  const listening = await listen(transport, port, handler)
  try {
    openData(folder)
    sweepSessions(store().database, new Date())
    const pages = await openPages(dev, listening)
    makeReady(pages)
    const address = `${transport.kind === 'own TLS' ? 'https' : 'http'}://localhost:${listening.port}`
    return { address, port: listening.port, stop: () => stop(listening, pages) }
  } catch (error) {
    listening.server.close()
    listening.server.closeAllConnections()
    throw error
  }
}

/** Lets what is under way finish, for five seconds, and then ends. */
async function stop({ server }: Listening, pages: Pages): Promise<void> {
  const closed = new Promise((resolve) => server.close(resolve))
  server.closeIdleConnections()
  const impatience = setTimeout(() => server.closeAllConnections(), 5000)
  await closed
  clearTimeout(impatience)
  await pages.close()
  await store().close()
}

/** @throws RangeError when the setting is no port */
function portOf(setting = '3000'): number {
  if (/^\d{1,5}$/.test(setting) && Number(setting) <= 65535) return Number(setting)
  throw new RangeError(`PORT is "${setting}", which is no number from 0 to 65535.`)
}

async function main(args: string[]): Promise<void> {
  const { address, stop } = await startServer({ dev: args.includes('--dev') })
  console.log(`Inchwater is ready at ${address}`)
  const code = makeSetUpCode(store().database, new Date())
  if (code) {
    console.log(
      `Nobody can sign in yet. Open ${address}/set-up and type this code, which works once:\n\n    ${code}\n`,
    )
  }
  let stopping = false
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => {
      // Ctrl-C arrives twice: from the terminal, and passed on by the program that started this one.
      if (stopping) return
      stopping = true
      console.log('Stopping …')
      void stop().then(() => process.exit(0))
    })
  }
}

/** What whoever started the server can put right gets its sentence; anything else is ours, and keeps its trace. */
function sayAndEnd(error: unknown): never {
  const theirs =
    error instanceof CannotListen || error instanceof MigrationRefused || error instanceof RangeError
  console.error(theirs ? error.message : error)
  process.exit(1)
}

const isCommand = process.argv[1] && import.meta.url === pathToFileURL(realpathSync(process.argv[1])).href
if (isCommand) await main(process.argv.slice(2)).catch(sayAndEnd)
