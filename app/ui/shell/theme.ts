/** A person's choice of light or dark; without one the device decides. */
export type Theme = 'light' | 'dark'

/** The cookie that carries the choice to the server, so that a page is never drawn in the wrong light first. */
export const themeCookie = 'inchwater-theme'

/** The choice in a cookie's text; undefined for none, and for anything else that stands there. */
export function themeOf(text: string | undefined): Theme | undefined {
  return text === 'light' || text === 'dark' ? text : undefined
}

/**
 * Puts a choice, or its absence, into effect on this page and on the ones to come. For the browser only. A browser
 * without a cookie store (before 2025) forgets the choice with the page.
 */
export async function chooseTheme(theme: Theme | undefined): Promise<void> {
  if (theme) document.documentElement.dataset.theme = theme
  else delete document.documentElement.dataset.theme
  if (!window.cookieStore) return
  if (!theme) return window.cookieStore.delete(themeCookie)
  const expires = Date.now() + 365 * 24 * 60 * 60 * 1000
  await window.cookieStore.set({ name: themeCookie, value: theme, sameSite: 'lax', expires })
}
