import { realpathSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { MigrationRefused } from '@/prisma/migrate'
import { door } from './http/door'
import { CannotListen, type Listening, listen } from './http/listen'
import { openPages, type Pages } from './http/pages'
import { localAddress, portOf, readTransport } from './http/transport'
import { endListening } from './live/live'
import { openData } from './openData'
import { makeSetUpCode } from './people/setUp'
import { store } from './people/store'
import { sweepSessions } from './people/sweepSessions'
import { settlePictures } from './photos/settlePictures'

export type StartOptions = {
  /** Where the team's data is; INCHWATER_DATA or ./data when not given. */
  folder?: string
  /** PORT or 3000 when not given; 0 takes any that is free. */
  port?: number
  dev?: boolean
}

export type Started = { address: string; port: number; stop(): Promise<void> }

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
    await settlePictures(new Date())
    const pages = await openPages(dev, listening)
    makeReady(pages)
    const { port: taken } = listening
    return { address: localAddress(transport, taken), port: taken, stop: () => stop(listening, pages) }
  } catch (error) {
    listening.server.close()
    listening.server.closeAllConnections()
    throw error
  }
}

/** Lets what is under way finish, for five seconds, and then ends. */
async function stop({ server }: Listening, pages: Pages): Promise<void> {
  const closed = new Promise((resolve) => server.close(resolve))
  endListening()
  server.closeIdleConnections()
  const impatience = setTimeout(() => server.closeAllConnections(), 5000)
  await closed
  clearTimeout(impatience)
  await pages.close()
  await store().close()
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
