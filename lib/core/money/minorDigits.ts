/** Currencies whose smallest unit is not a hundredth, by how many decimals they have (ISO 4217, list one). */
const others: Readonly<Record<number, readonly string[]>> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'.split(' '),
  3: 'BHD IQD JOD KWD LYD OMR TND'.split(' '),
  4: 'CLF UYW'.split(' '),
}

/**
 * How many decimals amounts in a currency have.
 * @param currency its three letters, by ISO 4217
 * @example minorDigits('USD') // 2
 */
export const minorDigits = (currency: string): number =>
  Number(Object.entries(others).find(([, codes]) => codes.includes(currency))?.[0] ?? 2)
