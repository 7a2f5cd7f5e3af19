/** For a request whose failure ends its transaction: the transaction's `done` says why, so nothing is said twice. */
export const toldByDone = (): void => {}
