/** Keeps every keyboard, browser and translator from improving what was typed off a label. */
export const letterForLetter = {
  autoCapitalize: 'off',
  autoComplete: 'off',
  autoCorrect: 'off',
  spellCheck: false,
  translate: 'no',
} as const
