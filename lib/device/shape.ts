/**
 * A reader of what came from outside: the value where it has this shape, of objects the known fields only. A zod schema
 * is one too. Those below are for what every screen reads when it opens, because zod alone weighs as much as the rest
 * of a first screen.
 */
export type Shape<T> = { safeParse(value: unknown): { success: true; data: T } | { success: false } }

/** What a shape reads. */
export type Shaped<S> = S extends Shape<infer T> ? T : never

type Fields = Readonly<Record<string, Shape<unknown>>>
type Whole<Needed extends Fields, Open extends Fields> = {
  -readonly [Name in keyof Needed]: Shaped<Needed[Name]>
} & { -readonly [Name in keyof Open]?: Shaped<Open[Name]> }

const none = { success: false } as const

const where = <T>(fits: (value: unknown) => value is T): Shape<T> => ({
  safeParse: (value) => (fits(value) ? { success: true, data: value } : none),
})

const isThing = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const text = where((value): value is string => typeof value === 'string')
export const flag = where((value): value is boolean => typeof value === 'boolean')
export const number = where((value): value is number => Number.isFinite(value))
export const whole = where((value): value is number => Number.isSafeInteger(value))
/** An object of whatever fields. */
export const thing = where(isThing)

export const oneOf = <const T extends string | true>(...values: readonly T[]): Shape<T> =>
  where((value): value is T => values.some((each) => each === value))

export const listOf = <T>(each: Shape<T>): Shape<T[]> => ({
  safeParse(value) {
    if (!Array.isArray(value)) return none
    const data: T[] = []
    for (const one of value) {
      const read = each.safeParse(one)
      if (!read.success) return none
      data.push(read.data)
    }
    return { success: true, data }
  },
})

/** @param open fields that may be left out */
export const object = <const Needed extends Fields, const Open extends Fields = Record<never, never>>(
  needed: Needed,
  open?: Open,
): Shape<Whole<Needed, Open>> => ({
  safeParse(value) {
    if (!isThing(value)) return none
    const data: Record<string, unknown> = {}
    for (const [name, shape] of Object.entries<Shape<unknown>>({ ...needed, ...open })) {
      if (value[name] === undefined && !Object.hasOwn(needed, name)) continue
      const read = shape.safeParse(value[name])
      if (!read.success) return none
      data[name] = read.data
    }
    return { success: true, data: data as Whole<Needed, Open> }
  },
})

/** An object that is refused when it has a field more: who does not know it would lose it. */
export const onlyThese = <T>(shape: Shape<T>): Shape<T> => ({
  safeParse(value) {
    const read = shape.safeParse(value)
    return read.success &&
      Object.keys(value as object).every((name) => Object.hasOwn(read.data as object, name))
      ? read
      : none
  },
})

export const eitherOf = <T>(...shapes: readonly Shape<T>[]): Shape<T> => ({
  safeParse(value) {
    for (const shape of shapes) {
      const read = shape.safeParse(value)
      if (read.success) return read
    }
    return none
  },
})
