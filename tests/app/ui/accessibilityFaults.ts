import axe from 'axe-core'

/**
 * What axe-core finds wrong with a piece of a page, as `rule: element`. Contrast is not among it, because jsdom
 * paints nothing: that is checked on the tokens and in a real browser.
 */
export async function accessibilityFaults(container: Element): Promise<string[]> {
  const { violations } = await axe.run(container, {
    rules: { 'color-contrast': { enabled: false }, region: { enabled: false } },
  })
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))
}
