import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser, openContext, signIn } from './e2e/openBrowser'
import { startServerProcess } from './setup/serverProcess'

/** Takes the picture at the top of the README from the demo: npm run picture. */
const data = mkdtempSync(path.join(tmpdir(), 'inchwater-picture-'))
spawnSync(process.execPath, ['--import', 'tsx', 'tests/setup/loadDemoInto.ts', data], { stdio: 'inherit' })
const server = await startServerProcess(data)
const browser = await openBrowser()
try {
  const page = await (await openContext(browser, { width: 1280, height: 2000 })).newPage()
  await signIn(page, server.url, demoPeople.ott.name, demoPeople.ott.password)
  await page.getByRole('searchbox').fill('thistle 1 040')
  await page.getByRole('list', { name: 'Results' }).getByRole('link').first().click()
  const card = page.getByRole('article').first()
  await card.waitFor()
  await card.screenshot({ path: 'seed-demo/pictures/setpoint.png' })
} finally {
  await browser.close()
  await server.stop()
  rmSync(data, { recursive: true, force: true })
}
