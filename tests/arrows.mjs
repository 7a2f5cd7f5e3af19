// Checks the import arrows of .config/dependency-cruiser.cjs. A checker that sees no module finds no fault either,
// so the number of modules that it saw is checked too.

import { readdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { cruise } from 'dependency-cruiser'
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config'

const require = createRequire(import.meta.url)
const config = require('../.config/dependency-cruiser.cjs')
const folders = ['app', 'lib', 'seed-demo', 'prisma']

const sourceFiles = folders
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true }).map((file) => path.join(folder, String(file))),
  )
  .filter((file) => /\.(ts|tsx|mjs)$/.test(file) && !file.startsWith('prisma/generated'))

const { output } = await cruise(
  folders,
  { ...config.options, ruleSet: { forbidden: config.forbidden }, validate: true },
  undefined,
  { tsConfig: extractTSConfig('tsconfig.json') },
)
const { summary, modules } = output
const seen = modules.filter((module) => sourceFiles.includes(module.source)).length

for (const { rule, from, to } of summary.violations) console.error(`${rule.name}: ${from} → ${to}`)
console.log(
  `Import arrows: ${seen} of ${sourceFiles.length} modules seen, ${summary.violations.length} violations.`,
)
if (summary.violations.length > 0) process.exitCode = 1
if (seen < sourceFiles.length * 0.98 || summary.totalDependenciesCruised < seen) {
  console.error('The checker did not see the whole tree, so its silence proves nothing.')
  process.exitCode = 1
}
