import { readdir } from 'node:fs/promises'
import path from 'node:path'
import { isMissing } from './manifest'

/** The name of the folder of photos, in a data folder and in a back-up. */
const photosName = 'photos'

/** Every file of the folder of photos, by its path in the data folder, with `/` on every system. */
export async function photoFiles(dataFolder: string): Promise<string[]> {
  const folder = path.join(dataFolder, photosName)
  try {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true })
    return entries
      .filter((entry) => entry.isFile())
      .map((entry) => path.relative(dataFolder, path.join(entry.parentPath, entry.name)))
      .map((file) => file.split(path.sep).join('/'))
      .sort()
  } catch (cause) {
    if (isMissing(cause)) return []
    throw cause
  }
}
