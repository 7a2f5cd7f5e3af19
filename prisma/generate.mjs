// Generates the database client into prisma/generated.
//
// `prisma generate` never runs the schema engine, but insists on having one, and would download it. Any program
// that exists satisfies it, so it is shown node itself. The variable is set for this one command only: with it,
// every other prisma command that needs the engine would do nothing and call that success.
import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import path from 'node:path'

const cli = createRequire(import.meta.url).resolve('prisma/build/index.js')
const schema = path.join(import.meta.dirname, 'schema')

const { status, error } = spawnSync(process.execPath, [cli, 'generate', '--schema', schema], {
  cwd: path.dirname(import.meta.dirname),
  stdio: 'inherit',
  env: {
    ...process.env,
    PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
    PRISMA_HIDE_UPDATE_MESSAGE: '1',
    CHECKPOINT_DISABLE: '1',
  },
})
if (error) throw error
process.exitCode = status ?? 1
