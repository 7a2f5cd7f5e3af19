/** The part of jstat that the tests use as an independent reference; it ships no types. */
declare module 'jstat' {
  type Distribution<Parameters extends number[]> = {
    pdf(x: number, ...parameters: Parameters): number
    cdf(x: number, ...parameters: Parameters): number
    inv(p: number, ...parameters: Parameters): number
  }
  const jstat: {
    normal: Distribution<[mean: number, standardDeviation: number]>
    beta: Distribution<[alpha: number, beta: number]>
    chisquare: Distribution<[degreesOfFreedom: number]>
  }
  export default jstat
}
