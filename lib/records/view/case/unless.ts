/** A list of one sentence, unless what it asks for is there; then of none. */
export const unless = (isThere: boolean, sentence: string): string[] => (isThere ? [] : [sentence])
