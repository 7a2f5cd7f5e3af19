/**
 * npm run restore -- BACKUP [--into FOLDER]
 *
 * Checks a back-up and puts it into the data folder (INCHWATER_DATA, else ./data), which must be empty, or into the one
 * that is named. Exits 1 on trouble, 64 on a slip in what was typed.
 */
import { pathToFileURL } from 'node:url'
import { dataFolder } from '../database'
import { restoreBackup } from './restoreBackup'
import { sayProgress, whyNoFile } from './sayProgress'

export async function restoreCommand(
  args: readonly string[],
  folder: string,
  say: (sentence: string) => void,
  now = new Date(),
): Promise<0 | 1 | 64> {
  const [from, flag, named, ...more] = args
  const understood = flag === undefined || (flag === '--into' && named !== undefined && more.length === 0)
  if (from === undefined || from.startsWith('-') || !understood) {
    say('Name the folder of one back-up, and where it goes if that is not the empty data folder:')
    say('npm run restore -- /media/backups/inchwater-2026-01-12T120000Z --into data')
    return 64
  }
  const into = named ?? folder
  try {
    const progress = sayProgress(say)
    const restored = await restoreBackup({ from, into, named: named !== undefined, now, progress })
    if (!restored.ok) {
      say(`${restored.problem.message} Nothing was restored.`)
      return 1
    }
    const { manifest, movedTo } = restored.value
    const { log, people, photos, madeAt } = manifest
    if (movedTo !== undefined) say(`What was there before is in ${movedTo}`)
    say(`Restored: ${log.entries} entries of the log, ${people} people, ${photos} photos, as of ${madeAt}.`)
    say(`They are in ${into}. Everybody signs in anew once the server runs.`)
    return 0
  } catch (cause) {
    const why = whyNoFile(cause)
    if (why === undefined) throw cause
    say(`${why} Nothing was restored.`)
    return 1
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = await restoreCommand(process.argv.slice(2), dataFolder(), console.log)
}
