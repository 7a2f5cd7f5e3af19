/** SHA-256 of bytes, lower-case hexadecimal: the name of a picture everywhere. */
export async function hashOf(bytes: BufferSource): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', bytes)
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
