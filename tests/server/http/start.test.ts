import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { type AddressInfo, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { openData } from '@/lib/server/openData'

const scratch = mkdtempSync(path.join(tmpdir(), 'start-'))
afterAll(() => rmSync(scratch, { recursive: true }))

/** Runs the start command to its end. */
function start(settings: Record<string, string>): Promise<{ code: number | null; said: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'lib/server/start.ts'], {
      env: { ...process.env, INCHWATER_DATA: path.join(scratch, 'never'), ...settings },
    })
    let said = ''
    child.stdout.on('data', (text) => (said += text))
    child.stderr.on('data', (text) => (said += text))
    child.on('exit', (code) => resolve({ code, said }))
  })
}

test('a busy port is named, with what to do, and nothing else is touched', async () => {
  const other = createServer()
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve))
  const { port } = other.address() as AddressInfo
  const { code, said } = await start({ PORT: String(port) })
  other.close()
  expect(said.trim()).toBe(
    `Port ${port} is in use by another program. Stop that one, or choose another port: PORT=${port + 1} npm start`,
  )
  expect(code).toBe(1)
  expect(statSync(path.join(scratch, 'never'), { throwIfNoEntry: false })).toBeUndefined()
})

test.each([
  [{ PORT: 'three' }, 'PORT is "three"'],
  [
    { INCHWATER_TLS_CERT: '/nowhere.pem', INCHWATER_TLS_KEY: '/nowhere.pem' },
    'INCHWATER_TLS_CERT names /nowhere.pem',
  ],
  [
    { INCHWATER_TLS_CERT: 'package.json', INCHWATER_TLS_KEY: 'package.json' },
    'not a certificate and its key',
  ],
])('a wrong setting %o ends with one sentence', async (settings, sentence) => {
  const { code, said } = await start({ PORT: '0', ...settings })
  expect(said).toContain(sentence)
  expect(said.trim().split('\n')).toHaveLength(1)
  expect(code).toBe(1)
})

test('openData makes the folder for this account alone, and its database', () => {
  const before = process.env.INCHWATER_DATA
  const folder = openData(path.join(scratch, 'team', 'data'))
  expect(statSync(folder).mode & 0o777).toBe(0o700)
  expect(statSync(path.join(folder, 'inchwater.db')).isFile()).toBe(true)
  expect(process.env.INCHWATER_DATA).toBe(folder)
  process.env.INCHWATER_DATA = before
})
