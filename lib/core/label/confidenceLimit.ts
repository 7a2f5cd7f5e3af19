/**
 * From this confidence on a candidate is offered as likely, 0 to 100. Set on a made set of pictures apart from the one
 * that is measured (tests/bench/labels.bench.ts): the lowest limit at which few of the offered values were wrong.
 */
export const confidenceLimit = 75
