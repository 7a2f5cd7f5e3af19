/** A long log says how far it is, every so many entries. */
const progressEvery = 20_000

/** Tells whoever waits how far the check of the log is. */
export function sayProgress(say: (sentence: string) => void): (done: number, of: number) => void {
  let told = 0
  return (done, of) => {
    if (done - told < progressEvery) return
    told = done
    say(`${done} of ${of} entries fit so far …`)
  }
}

const sentences: Readonly<Record<string, string>> = {
  ENOSPC: 'There is no room left on the disk. Free some, or use another.',
  EACCES: 'This account may not write or read there.',
  EPERM: 'This account may not write or read there.',
  EROFS: 'That disk can only be read.',
  ENOTDIR: 'That is a file, and a folder is needed.',
  EEXIST: 'That is a file, and a folder is needed.',
  ENOTEMPTY: 'Another program put something there meanwhile.',
  EIO: 'The disk answered with an error.',
}

/** What is wrong with a disk or a folder, as a sentence for whoever can put it right; undefined for anything else. */
export function whyNoFile(cause: unknown): string | undefined {
  if (!(cause instanceof Error) || !('code' in cause) || typeof cause.code !== 'string') return undefined
  const sentence = sentences[cause.code]
  const where = 'path' in cause && typeof cause.path === 'string' ? ` (${cause.path})` : ''
  return sentence === undefined ? undefined : `${sentence}${where}`
}
