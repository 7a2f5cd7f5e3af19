import { readdir } from 'node:fs/promises'
import path from 'node:path'
import { pictureFolder } from '../photos/pictureFiles'
import { isMissing } from './manifest'

/** Every file of the folder of photos, by its path in the data folder, with `/` on every system. */
export async function photoFiles(dataFolder: string): Promise<string[]> {
  const folder = pictureFolder(dataFolder)
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
