import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { readStamp } from './files.mjs'

/** Does some work while no other run does it. A lock whose owner runs no more is taken over. */
export async function withLock(lock, work, say = console.log) {
  mkdirSync(path.dirname(lock), { recursive: true })
  let told = false
  while (!takeLock(lock)) {
    if (!told) say('Another run is preparing; waiting for it …')
    told = true
    await new Promise((resolve) => setTimeout(resolve, 250))
  }
  const release = () => rmSync(lock, { force: true })
  process.once('exit', release)
  try {
    return work()
  } finally {
    release()
    process.off('exit', release)
  }
}

function takeLock(lock) {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' })
    return true
  } catch (error) {
    if (error.code !== 'EEXIST') throw error
  }
  const owner = Number(readStamp(lock))
  if (owner && !isRunning(owner)) rmSync(lock, { force: true })
  return false
}

function isRunning(pid) {
  try {
    return process.kill(pid, 0)
  } catch (error) {
    return error.code === 'EPERM'
  }
}
