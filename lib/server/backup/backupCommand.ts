/**
 * npm run backup -- FOLDER
 *
 * Makes a back-up of the data folder (INCHWATER_DATA, else ./data) in a new folder inside FOLDER, while the server runs
 * or not. Exits 1 on trouble, 64 on a slip in what was typed.
 */
import { pathToFileURL } from 'node:url'
import { dataFolder } from '../database'
import { makeBackup } from './makeBackup'
import { sayProgress, whyNoFile } from './sayProgress'

export async function backupCommand(
  args: readonly string[],
  folder: string,
  say: (sentence: string) => void,
  now = new Date(),
): Promise<0 | 1 | 64> {
  const [into, ...more] = args
  if (into === undefined || into.startsWith('-') || more.length > 0) {
    say('Say where back-ups are kept, for instance: npm run backup -- /media/backups')
    return 64
  }
  try {
    const made = await makeBackup({ dataFolder: folder, into, now, progress: sayProgress(say) })
    if (!made.ok) {
      say(`${made.problem.message} No back-up was made.`)
      return 1
    }
    const { log, people, photos } = made.value.manifest
    say(`The back-up is whole: ${log.entries} entries of the log, ${people} people, ${photos} photos.`)
    const { damaged, missing } = made.value.pictures
    for (const file of damaged) say(`${file} is damaged where the server keeps it, and was copied as it is.`)
    for (const sha256 of missing) say(`The picture ${sha256} is noted, but its file is not there.`)
    say(`It is in ${made.value.folder}`)
    if (log.entries > 0) {
      say(
        `Keep this elsewhere to compare with later: npm run verify-log -- --expect ${log.entries}:${log.headHash}`,
      )
    }
    return 0
  } catch (cause) {
    const why = whyNoFile(cause)
    if (why === undefined) throw cause
    say(`${why} No back-up was made.`)
    return 1
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = await backupCommand(process.argv.slice(2), dataFolder(), console.log)
}
