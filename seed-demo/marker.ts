import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { z } from 'zod'

const marker = z.object({
  /** SHA-256 of what is loaded. */
  company: z.string(),
  loaded: z.boolean(),
})

export type Marker = z.infer<typeof marker>

const fileIn = (folder: string) => path.join(folder, 'demo-company.json')

/** What the demo left in a folder to know it by; undefined where it never was. */
export function readMarker(folder: string): Marker | undefined {
  const file = fileIn(folder)
  return existsSync(file) ? marker.parse(JSON.parse(readFileSync(file, 'utf8'))) : undefined
}

export const writeMarker = (folder: string, said: Marker): void =>
  writeFileSync(fileIn(folder), `${JSON.stringify(said)}\n`)
