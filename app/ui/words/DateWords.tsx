import { sayDate, sayMoment } from './sayDate'

type Props = {
  /** ISO 8601 date or moment. */
  at: string
  /** Adds the time of day. */
  withTime?: boolean
}

/** A date that reads as words and that a machine can read too. */
export function DateWords({ at, withTime = false }: Props) {
  return <time dateTime={at}>{withTime ? sayMoment(at) : sayDate(at)}</time>
}
