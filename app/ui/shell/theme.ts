/** A person's choice of light or dark; without one the device decides. */
export type Theme = 'light' | 'dark'

/** The cookie that carries the choice to the server, so that a page is never drawn in the wrong light first. */
export const themeCookie = 'inchwater-theme'

/** The choice in a cookie's text; undefined for none, and for anything else that stands there. */
export function themeOf(text: string | undefined): Theme | undefined {
  return text === 'light' || text === 'dark' ? text : undefined
}
