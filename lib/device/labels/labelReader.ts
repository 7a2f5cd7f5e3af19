import type { Page } from 'tesseract.js'
import type { LabelLine } from '@/lib/core/label'
import { labelReaderAt } from '../readers/addresses'
import type { Greys } from './greys'
import { asPgm } from './preparations'

/** Recognises the words of a picture. */
export type LabelReader = {
  words(picture: Greys): Promise<LabelLine[]>
  close(): Promise<void>
}

/** Where recognition finds its own files. In a browser: on this server, and nowhere else. */
export type ReaderPlaces = {
  workerPath?: string
  corePath?: string
  langPath: string
  workerBlobURL?: boolean
}

const onThisServer: ReaderPlaces = {
  workerPath: `${labelReaderAt}/worker.js`,
  corePath: labelReaderAt,
  langPath: labelReaderAt,
  // A blob would not be held to the policy that the file comes with.
  workerBlobURL: false,
}

/** The characters of rating labels. Without a list, dirt is read as signs that no label has. */
const characters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,:-/+±()#" '

/** tesseract’s own word for one block of lines of like size (its page segmentation mode 6). */
const oneBlock = '6'

/**
 * Loads the recognition of letters, some seven megabytes at first and none after that, and starts it.
 * @throws Error when its files cannot be fetched, or the device has too little memory
 */
export async function openLabelReader(places: ReaderPlaces = onThisServer): Promise<LabelReader> {
  const { createWorker } = await import('tesseract.js')
  let failed: ((cause: Error) => void) | undefined
  const failure = new Promise<never>((_, reject) => {
    failed = reject
  })
  // Said once more to whoever waits; a failure that comes when nobody does is no news.
  failure.catch(() => undefined)
  const worker = await Promise.race([
    createWorker('eng', 1, {
      ...places,
      gzip: true,
      // The files are kept by the service worker, under addresses with their version in them.
      cacheMethod: 'none',
      errorHandler: (cause: unknown) => failed?.(new Error(String(cause))),
    }).catch((cause: unknown) => {
      throw new Error(cause === undefined ? 'its files could not be fetched' : String(cause))
    }),
    failure,
  ])
  await worker.setParameters({
    tessedit_pageseg_mode: oneBlock as never,
    tessedit_char_whitelist: characters,
    user_defined_dpi: '300',
  })
  return {
    words: async (picture) => {
      const input = asPgm(picture) as unknown as Blob
      const { data } = await worker.recognize(input, {}, { blocks: true, text: false })
      return linesOf(data)
    },
    close: async () => {
      await worker.terminate()
    },
  }
}

/** The lines of a recognised page, from top to bottom, without what is no word. */
function linesOf({ blocks }: Page): LabelLine[] {
  const lines = (blocks ?? []).flatMap(({ paragraphs }) => paragraphs.flatMap((paragraph) => paragraph.lines))
  return lines
    .map(({ words }) =>
      words
        .filter(({ text }) => /[\p{L}\p{N}]/u.test(text))
        .map(({ text, confidence }) => ({ text: text.trim(), confidence })),
    )
    .filter((words) => words.length > 0)
}
