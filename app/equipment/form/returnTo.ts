/** A path of this application and of nowhere else: one slash, and no second sign that a browser takes for one. */
const ownPath = /^\/(?![/\\])/

/** The name of the query's part that says where to go once a record is saved. */
const name = 'then'

/** The address of a form that leads back to where it was called from, once its record is saved. */
export const leadingBack = (form: string, back: string): string =>
  `${form}${form.includes('?') ? '&' : '?'}${new URLSearchParams({ [name]: back })}`

/**
 * Where to go once a record is saved: back to the form that it was missing from, else to the place given.
 *
 *   returnTo(new URLSearchParams('then=/equipment/superseded'), '/equipment')  // '/equipment/superseded'
 */
export function returnTo(query: { get(name: string): string | null }, otherwise: string): string {
  const back = query.get(name)
  return back !== null && ownPath.test(back) ? back : otherwise
}
