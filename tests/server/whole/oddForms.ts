import fc from 'fast-check'
import { brokenJson, jsonText, oddKeys, oddValue } from './oddJson'

/** Bodies near a form that a route takes: fields of it changed, dropped or added; any JSON; and none at all. */
export function oddForms(form: Record<string, unknown>): fc.Arbitrary<string | Uint8Array<ArrayBuffer>> {
  const own = Object.keys(form)
  // Its own fields as often as all the others together.
  const field = fc.oneof(
    ...[own, oddKeys].flatMap((keys) => (keys.length > 0 ? [fc.constantFrom(...keys)] : [])),
  )
  const changed = fc
    .array(fc.tuple(field, fc.option(oddValue, { nil: undefined })), {
      minLength: 1,
      maxLength: 3,
    })
    .map((changes) => jsonText({ ...form, ...Object.fromEntries(changes) }))
  return fc.oneof(
    { weight: 5, arbitrary: changed },
    { weight: 2, arbitrary: oddValue.map(jsonText) },
    { weight: 2, arbitrary: brokenJson(changed) },
  )
}
