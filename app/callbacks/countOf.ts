/** @example countOf(2, 'call') // '2 calls' */
export const countOf = (count: number, one: string, many = `${one}s`): string =>
  `${count.toLocaleString('en')} ${count === 1 ? one : many}`
