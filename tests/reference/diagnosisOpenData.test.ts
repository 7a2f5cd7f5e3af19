import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import {
  type Catalogue,
  type Forecast,
  type PastCase,
  packCases,
  rankCauses,
  scoreForecasts,
} from '@/lib/core/diagnosis'
import { replayForecaster, tunings } from '@/lib/core/diagnosis/replayForecaster'

// Two open data sets, ten folds of each, and what the naiveBayes of R's e1071 (laplace = 1) forecast for every case
// from the other nine folds. Sources, licences and the script that made the files: data/diagnosis/README.md.
const folder = path.join(import.meta.dirname, 'data/diagnosis')
const rowsOf = (file: string) => {
  const [header, ...rows] = readFileSync(path.join(folder, file), 'utf8').trim().split('\n')
  const columns = header!.split(',')
  return rows.map((row) => Object.fromEntries(row.split(',').map((cell, at) => [columns[at]!, cell])))
}

type Folded = {
  one: PastCase
  fold: string
  truth: string
  complete: boolean
  reference: Record<string, string>
}

function load(name: string): { catalogue: Catalogue; folded: Folded[] } {
  const findings = rowsOf(`${name}-findings.csv`).map(({ finding, values }) => {
    // Add-one smoothing is one pseudo-count for each value: m = 1, as strong as there are values.
    const list = values!.split(' ')
    return { id: finding!, values: list, strength: list.length }
  })
  const reference = rowsOf(`${name}-reference.csv`)
  const causes = Object.keys(reference[0]!).filter((column) => column !== 'case')
  const folded = rowsOf(`${name}.csv`).map((row, at): Folded => {
    const found = findings.filter(({ id }) => row[id] !== '').map(({ id }) => [id, row[id]!])
    return {
      one: {
        id: row.case!.padStart(4, '0'),
        findings: Object.fromEntries(found),
        cause: { main: row.cause!, status: 'confirmed' },
      },
      fold: row.fold!,
      truth: row.cause!,
      complete: found.length === findings.length,
      reference: reference[at]!,
    }
  })
  return { catalogue: { causes: causes.map((id) => ({ id, prior: 1 })), findings }, folded }
}

const folds = (folded: readonly Folded[]) =>
  [...new Set(folded.map(({ fold }) => fold))].map((fold) => ({
    training: folded.filter((one) => one.fold !== fold),
    held: folded.filter((one) => one.fold === fold),
  }))

const causesOf = (catalogue: Catalogue) => catalogue.causes.map(({ id }) => id)

const summary = rowsOf('reference-summary.csv')

describe.each([
  ['soybean', 683, 35, 19, 121],
  ['house-votes', 435, 16, 2, 203],
])(
  '%s: %i cases, %i findings, %i causes, %i of them incomplete',
  (name, cases, findings, causes, incomplete) => {
    const { catalogue, folded } = load(name)
    const printed = summary.find(({ data }) => data === name)!
    const reference: Forecast[] = folded.map(({ truth, reference: row }) => ({
      probabilities: causesOf(catalogue).map((cause) => Number(row[cause])),
      truth: causesOf(catalogue).indexOf(truth),
    }))

    test('is read whole', () => {
      expect(folded).toHaveLength(cases)
      expect(catalogue.findings).toHaveLength(findings)
      expect(catalogue.causes).toHaveLength(causes)
      expect(folded.filter(({ complete }) => !complete)).toHaveLength(incomplete)
      expect(folds(folded)).toHaveLength(10)
    })

    test('accuracy and log loss of the reference are what R worked out for them', () => {
      const scores = scoreForecasts(reference)
      expect(scores.top1.rate).toBeCloseTo(Number(printed.accuracy), 9)
      expect(scores.logLoss).toBeCloseTo(Number(printed.logLoss), 8)
    })

    test('plain naive Bayes gives the reference’s probabilities to 1e-9, complete cases and incomplete ones', () => {
      const settings = {
        neighbours: Infinity,
        priorStrength: 1e-12,
        findingStrength: 1,
        unlistedPrior: 0,
        replicates: 0,
      }
      let furthest = 0
      for (const { training, held } of folds(folded)) {
        const packed = packCases(
          catalogue,
          training.map(({ one }) => one),
        )
        for (const { one, reference: row } of held) {
          for (const { cause, probability } of rankCauses({
            catalogue,
            cases: packed,
            observed: one.findings,
            settings,
          })) {
            furthest = Math.max(furthest, Math.abs(probability - Number(row[cause])))
          }
        }
      }
      expect(furthest).toBeLessThan(1e-9)
    })

    test('locally weighted, its settings chosen inside the training folds, loses less than the reference by more than one standard error', () => {
      const tried = tunings({
        neighbours: [50, 200, Infinity],
        priorStrength: [causes],
        findingStrength: [0.1, 0.3, 1],
      })
      const ranking = { unlistedPrior: 0, replicates: 0, similarPerCause: 0 }
      const local = new Map<string, Forecast>()
      for (const { training, held } of folds(folded)) {
        const packed = packCases(
          catalogue,
          training.map(({ one }) => one),
        )
        // Every third training case is forecast from the other training cases; the fold held back is never looked at.
        const forecaster = replayForecaster(catalogue, packed, ranking, tried)
        const losses = tried.map(() => 0)
        packed.cases.forEach((one, at) => {
          if (at % 3 !== 0) return
          const chances = forecaster.forecast(at, one.findings, {}).chanceOf(one.cause!.main)
          chances.forEach((chance, tuning) => {
            losses[tuning]! -= Math.log(chance)
          })
        })
        const settings = { ...ranking, ...tried[losses.indexOf(Math.min(...losses))]! }
        for (const { one, truth } of held) {
          const ranked = rankCauses({ catalogue, cases: packed, observed: one.findings, settings })
          const probabilities = ranked.map(({ probability }) => probability)
          local.set(one.id, { probabilities, truth: ranked.findIndex(({ cause }) => cause === truth) })
        }
      }
      const forecasts = folded.map(({ one }) => local.get(one.id)!)
      const differences = forecasts.map(
        (forecast, at) => scoreForecasts([forecast]).logLoss - scoreForecasts([reference[at]!]).logLoss,
      )
      const mean = differences.reduce((sum, one) => sum + one, 0) / cases
      const variance = differences.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (cases - 1)
      const standardError = Math.sqrt(variance / cases)
      expect(mean).toBeLessThan(-standardError)
    }, 60_000)
  },
)
