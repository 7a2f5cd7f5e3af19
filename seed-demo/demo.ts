import path from 'node:path'
import { startServer } from '@/lib/server/start'
import { loadDemo } from './load'
import { company } from './names'
import { demoPeople } from './people'

const folder = path.resolve(process.env.INCHWATER_DEMO_DATA || path.join(import.meta.dirname, 'data'))

/** Loads the demo company if it is not there, serves it, and says how to sign in. */
async function main(): Promise<void> {
  const loading = await loadDemo(folder)
  if (loading === 'older') {
    console.log(`The demo in ${folder} is an earlier version’s. Delete that folder to have the new one.`)
  }
  const { address, stop } = await startServer({ folder })
  console.log(
    `\n${company} is ready at ${address}\n\n${signIns()}\n\nEverybody and everything in it is invented.`,
  )
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

function signIns(): string {
  const people = Object.values(demoPeople).map(({ name, role, password }) => [name, role, password])
  const rows = [['Sign in as', 'role', 'password'], ...people]
  const width = (column: number) => Math.max(...rows.map((row) => row[column]!.length))
  return rows
    .map(
      ([name = '', role = '', password = '']) =>
        `  ${name.padEnd(width(0))}   ${role.padEnd(width(1))}   ${password}`,
    )
    .join('\n')
}

/** Errors whose message is a sentence for whoever started the demo. */
const theirs = ['CannotListen', 'MigrationRefused', 'DemoNotLoaded', 'RangeError']

/** What they can put right gets its sentence; anything else is ours, and keeps its trace. */
function sayAndEnd(error: unknown): never {
  const isTheirs = error instanceof Error && theirs.includes(error.name)
  // The server's own advice names its own command.
  console.error(isTheirs ? error.message.replace('npm start', 'npm run demo') : error)
  process.exit(1)
}

await main().catch(sayAndEnd)
