import { readdirSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'

/** A benchmark prints what it measured, ratios of things measured in the same run above all: machines differ. */
type Bench = { name: string; run: (print: (line: string) => void) => Promise<void> }

/**
 * Runs the benchmarks named, or all: every file `*.bench.ts` beside this one exports a `name` and a `run`.
 *
 *   node --import tsx tests/bench/run.ts find
 */
async function main(wanted: string[]): Promise<void> {
  const files = readdirSync(import.meta.dirname).filter((file) => file.endsWith('.bench.ts'))
  const benches: Bench[] = await Promise.all(
    files.sort().map((file) => import(pathToFileURL(path.join(import.meta.dirname, file)).href)),
  )
  const names = benches.map(({ name }) => name)
  const unknown = wanted.filter((name) => !names.includes(name))
  if (unknown.length > 0)
    throw new RangeError(`no benchmark called ${unknown.join(', ')}; there are: ${names.join(', ')}`)

  console.log(
    `node ${process.version}, ${os.availableParallelism()} cores, ${os.cpus()[0]?.model.trim() ?? 'processor not named'}`,
  )
  for (const { name, run } of benches) {
    if (wanted.length > 0 && !wanted.includes(name)) continue
    console.log(`\n${name}`)
    await run((line) => console.log(`  ${line}`))
  }
}

await main(process.argv.slice(2))
