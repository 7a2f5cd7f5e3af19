import { type Catalogue, type Chances, type Finding, notChecked, unlistedCause } from './catalogue'

const slack = 1e-9

/** A check may end in so many different ways, the values of its findings taken together. */
export const mostOutcomes = 4096

/** So many context fields can be compared at once. */
const mostContextFields = 8

/**
 * Refuses a catalogue that no diagnosis can work on: throws RangeError when there is no cause, an id or a value is
 * twice there or reserved, a base rate or chance is not a number in its range, or a name refers to nothing.
 */
export function checkCatalogue(catalogue: Catalogue): void {
  const { causes, findings, checks = [], context = [], checklist = [] } = catalogue
  if (causes.length === 0) throw new RangeError('A catalogue needs at least one cause')
  const causeIds = uniqueIds(causes, 'cause')
  const findingIds = uniqueIds(findings, 'finding')
  uniqueIds(checks, 'check')
  uniqueIds(context, 'context field')
  if (causeIds.has(unlistedCause)) throw new RangeError(`No cause may be called '${unlistedCause}'`)
  for (const finding of findings) {
    if (finding.values.length < 2 || new Set(finding.values).size !== finding.values.length) {
      throw new RangeError(`Finding ${finding.id} needs at least two values, all different`)
    }
    if (finding.values.includes(notChecked))
      throw new RangeError(`'${notChecked}' is no value of ${finding.id}`)
    if (!((finding.strength ?? 1) > 0)) throw new RangeError(`The strength of ${finding.id} must be above 0`)
    if (finding.usual) checkChances(finding, finding.usual, 'usually')
  }
  const findingById = new Map(findings.map((finding) => [finding.id, finding]))
  for (const cause of causes) {
    if (!(cause.prior > 0 && cause.prior < Infinity))
      throw new RangeError(`Cause ${cause.id} needs a prior above 0`)
    for (const [id, chances] of Object.entries(cause.likelihoods ?? {})) {
      const finding = findingById.get(id)
      if (!finding) throw new RangeError(`Cause ${cause.id} speaks of ${id}, which is no finding`)
      checkChances(finding, chances, `under ${cause.id}`)
    }
  }
  for (const check of checks) {
    const stranger = check.reveals.find((id) => !findingIds.has(id))
    if (stranger !== undefined)
      throw new RangeError(`Check ${check.id} reveals ${stranger}, which is no finding`)
  }
  if (context.length > mostContextFields) {
    throw new RangeError(`At most ${mostContextFields} context fields can be compared at once`)
  }
  for (const field of context) {
    if (!(field.weight >= 0 && field.weight < Infinity)) {
      throw new RangeError(`The weight of context field ${field.id} must be 0 or more`)
    }
  }
  if (new Set(checklist).size !== checklist.length) throw new RangeError('The checklist names a cause twice')
  const stranger = checklist.find((id) => !causeIds.has(id))
  if (stranger !== undefined) throw new RangeError(`The checklist names ${stranger}, which is no cause`)
}

function uniqueIds(things: readonly { id: string }[], what: string): Set<string> {
  const ids = new Set(things.map((thing) => thing.id))
  if (ids.size !== things.length) throw new RangeError(`Two things of the kind '${what}' have the same id`)
  return ids
}

function checkChances(finding: Finding, chances: Chances, where: string): void {
  let sum = 0
  for (const value of finding.values) {
    const chance = chances[value]
    if (chance === undefined || !(chance > 0 && chance < 1)) {
      throw new RangeError(`${finding.id} ${where}: the chance of '${value}' must be above 0 and below 1`)
    }
    sum += chance
  }
  if (Math.abs(sum - 1) > slack) throw new RangeError(`${finding.id} ${where}: the chances must add up to 1`)
}
