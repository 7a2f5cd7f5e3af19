/** The words with a capital at their beginning. */
export const capitalised = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)
