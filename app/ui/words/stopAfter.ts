/** The full stop of a sentence that ends with what somebody typed: none where that ends with one, as “w.c.” does. */
export const stopAfter = (text: string): '' | '.' => (text.endsWith('.') ? '' : '.')
