import type { z } from 'zod'

/** How many of the faults a sentence names. */
const named = 3

/**
 * Says in words which fields of something sent do not fit their schema, and why.
 *
 * @example whatDoesNotFit(error)
 *   // 'In “elevation band, from metres”: An elevation must be a number of metres.'
 */
export function whatDoesNotFit(error: z.core.$ZodError): string {
  const sentences = error.issues.slice(0, named).map((issue) => {
    const where = issue.path.map(pathWord).join(', ')
    return where === '' ? sentenceOf(issue) : `In “${where}”: ${sentenceOf(issue)}`
  })
  const more = error.issues.length - named
  return [...sentences, ...(more > 0 ? [`And ${more} more.`] : [])].join(' ')
}

/** 'fromMetres' reads "from metres"; 2, the third of a list, reads "item 3". */
const pathWord = (step: PropertyKey): string =>
  typeof step === 'number'
    ? `item ${step + 1}`
    : String(step).replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`)

/** A schema's own message is a sentence already; the library's are turned into one. */
export function sentenceOf(issue: z.core.$ZodIssue): string {
  if (issue.code === 'unrecognized_keys') {
    const keys = issue.keys.slice(0, named).map((key) => `“${key.slice(0, 40)}”`)
    const more = issue.keys.length - named
    return `This program knows no ${keys.join(' and no ')} here.${more > 0 ? ` And ${more} more.` : ''}`
  }
  if (issue.message.endsWith('received undefined')) return 'It is missing.'
  const libraryWords = /^(?:Invalid input|Invalid option|Invalid string|Too big|Too small): (.+)$/.exec(
    issue.message,
  )
  const words = libraryWords?.[1] ?? issue.message
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`
}
