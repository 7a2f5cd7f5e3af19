import fc from 'fast-check'
import {
  type Catalogue,
  type Cause,
  type Chances,
  causeStatuses,
  defaultRankingSettings,
  type Finding,
  notChecked,
  type Observations,
  type PastCase,
  type RankingSettings,
} from '@/lib/core/diagnosis'

/** Any catalogue, any history and any present case in its words, for property tests. Everything made is frozen. */
export type AnyDiagnosis = {
  catalogue: Catalogue
  cases: PastCase[]
  observed: Observations
  context: Record<string, string>
  settings: RankingSettings
}

export function deepFreeze<T>(thing: T): T {
  if (typeof thing === 'object' && thing !== null && !Object.isFrozen(thing)) {
    Object.freeze(thing)
    Object.values(thing).forEach(deepFreeze)
  }
  return thing
}

const chancesOf = (values: readonly string[]): fc.Arbitrary<Chances> =>
  fc
    .array(fc.integer({ min: 1, max: 50 }), { minLength: values.length, maxLength: values.length })
    .map((parts) => {
      const sum = parts.reduce((total, part) => total + part, 0)
      return Object.fromEntries(values.map((value, place) => [value, parts[place]! / sum]))
    })

const anyFinding = (place: number): fc.Arbitrary<Finding> =>
  fc
    .record({
      values: fc.constantFrom(['seen', 'ruled out'], ['low', 'fair', 'high'], ['a', 'b', 'c', 'd']),
      carries: fc.constantFrom(undefined, 'evidence' as const, 'evidence' as const, 'context only' as const),
      strength: fc.constantFrom(undefined, 0.5, 2),
      speaks: fc.boolean(),
    })
    .chain(({ speaks, ...finding }) =>
      (speaks ? chancesOf(finding.values) : fc.constant(undefined)).map((usual) => ({
        id: `finding ${place}`,
        ...finding,
        usual,
      })),
    )

const anyCause = (place: number, findings: readonly Finding[]): fc.Arbitrary<Cause> =>
  fc
    .record({
      prior: fc.integer({ min: 1, max: 9 }),
      likelihoods: fc.tuple(
        ...findings.map(({ values }) => fc.option(chancesOf(values), { nil: undefined })),
      ),
    })
    .map(({ prior, likelihoods }) => ({
      id: `cause ${place}`,
      prior,
      likelihoods: Object.fromEntries(
        findings.flatMap(({ id }, at) => (likelihoods[at] === undefined ? [] : [[id, likelihoods[at]]])),
      ),
    }))

export const anyCatalogue: fc.Arbitrary<Catalogue> = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 2 }))
  .chain(([causes, findings, fields]) =>
    fc.tuple(...Array.from({ length: findings }, (_, place) => anyFinding(place))).chain((made) =>
      fc.tuple(...Array.from({ length: causes }, (_, place) => anyCause(place, made))).map((ofCauses) => ({
        causes: ofCauses,
        findings: made,
        context: Array.from({ length: fields }, (_, place) => ({
          id: `field ${place}`,
          weight: 0.25 * (place + 1),
        })),
      })),
    ),
  )

export const anyObservations = ({ findings }: Catalogue): fc.Arbitrary<Observations> =>
  fc
    .tuple(
      ...findings.map(({ values }) => fc.option(fc.constantFrom(notChecked, ...values), { nil: undefined })),
    )
    .map((values) =>
      Object.fromEntries(
        findings.flatMap(({ id }, at) => (values[at] === undefined ? [] : [[id, values[at]!]])),
      ),
    )

const anyContext = ({ context = [] }: Catalogue): fc.Arbitrary<Record<string, string>> =>
  fc
    .tuple(...context.map(() => fc.constantFrom(undefined, 'x', 'y', 'z')))
    .map((stated) =>
      Object.fromEntries(
        context.flatMap(({ id }, at) => (stated[at] === undefined ? [] : [[id, stated[at]!]])),
      ),
    )

export const anyCase = (catalogue: Catalogue): fc.Arbitrary<Omit<PastCase, 'id'>> => {
  const names = [...catalogue.causes.map(({ id }) => id), 'something else']
  return fc.record({
    findings: anyObservations(catalogue),
    context: anyContext(catalogue),
    cause: fc.option(
      fc
        .record({
          main: fc.constantFrom(...names),
          contributing: fc.option(fc.constantFrom(...names), { nil: undefined }),
          status: fc.constantFrom(...causeStatuses),
        })
        .map((cause) => (cause.main === cause.contributing ? { ...cause, contributing: undefined } : cause)),
      { nil: undefined },
    ),
  })
}

export const anyDiagnosis: fc.Arbitrary<AnyDiagnosis> = anyCatalogue.chain((catalogue) =>
  fc
    .record({
      cases: fc
        .array(anyCase(catalogue), { maxLength: 40 })
        .map((made) => made.map((one, place) => ({ id: `case ${place}`, ...one }))),
      observed: anyObservations(catalogue),
      context: anyContext(catalogue),
      settings: fc
        .record({
          neighbours: fc.constantFrom(1, 2, 5, 20, Infinity),
          priorStrength: fc.constantFrom(0.1, 1, 20),
          findingStrength: fc.constantFrom(0.1, 1, 8),
          unlistedPrior: fc.constantFrom(0, 0.05, 0.5),
          contributingShare: fc.constantFrom(0, 0.3),
        })
        .map((some) => ({ ...defaultRankingSettings, replicates: 20, ...some })),
    })
    .map((rest) => deepFreeze({ catalogue, ...rest })),
)
