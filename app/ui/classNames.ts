/** Joins the class names that apply; `classNames('a', undefined, false, 'b')` is `'a b'`. */
export function classNames(...names: (string | undefined | false)[]): string {
  return names.filter(Boolean).join(' ')
}
