import { isTagCode } from './tagCode'

/** The page that a tag leads to. */
export const tagPath = '/t'

/** What a tag's QR code holds: a page of this server, with the code and nothing else. */
export const tagLink = (origin: string, code: string): string => `${origin}${tagPath}?c=${code}`

/**
 * The code in what was read off a tag; undefined when it is no tag's link. The host is not looked at: a server that
 * moved to another name goes on knowing the tags that were stuck on before.
 * @example codeInTagLink('https://team.example/t?c=0123456789A2') // '0123456789A2'
 */
export function codeInTagLink(read: string): string | undefined {
  if (!URL.canParse(read)) return undefined
  const { pathname, searchParams } = new URL(read)
  const code = searchParams.get('c')
  return pathname === tagPath && code !== null && isTagCode(code) ? code : undefined
}
