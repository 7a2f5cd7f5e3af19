import { describe, expect, test } from 'vitest'
import { causes } from '@/lib/catalogue/causes'
import { checkById, checkMinutes, checks, workSteps } from '@/lib/catalogue/checks'
import { findingById, findings } from '@/lib/catalogue/findings'
import { workStates } from '@/lib/catalogue/workState'
import { mostOutcomes } from '@/lib/core/diagnosis/checkCatalogue'

const byStep = (step: string) => checks.filter((check) => check.step === step)

describe('checks', () => {
  test('every one has a name, what to do, minutes, a tool, a state of the furnace and a source', () => {
    expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length)
    expect(new Set(checks.map(({ name }) => name)).size).toBe(checks.length)
    for (const check of checks) {
      expect(checkById(check.id)).toBe(check)
      expect(check.what).toMatch(/^[A-Z].*[.?]$/)
      expect(check.what.length).toBeLessThanOrEqual(200)
      expect(workStates).toContain(check.state)
      expect(checkMinutes[check.id]).toBe(check.minutes)
      expect(check.minutes).toBeGreaterThan(0)
      expect(check.source.length).toBeGreaterThan(10)
    }
  })

  test('together they reveal every finding that a person records and every one drawn from readings', () => {
    const revealed = new Set(checks.flatMap(({ reveals }) => reveals))
    expect(findings.filter(({ id }) => !revealed.has(id)).map(({ id }) => id)).toEqual([])
    for (const id of revealed) expect(findingById(id)).toBeDefined()
  })

  test('none can end in more ways than a phone can weigh at a tap', () => {
    for (const { id, reveals } of checks) {
      const ways = reveals.reduce((product, finding) => {
        const entry = findingById(finding)
        return product * (entry?.carries === 'context only' ? 1 : (entry?.values.length ?? 1))
      }, 1)
      expect(ways, id).toBeLessThanOrEqual(128)
      expect(ways).toBeLessThan(mostOutcomes)
    }
  })

  test('the steps come in the order of the work, and the switch off the furnace last', () => {
    expect([...new Set(checks.map(({ step }) => step))]).toEqual([...workSteps])
    expect(checks.at(-1)?.id).toBe('hand-pump-the-switch')
    expect(byStep('at the door').every(({ by }) => by === 'look')).toBe(true)
    expect(byStep('quick looks').every(({ by }) => by === 'look')).toBe(true)
    expect(byStep('measuring').every(({ by }) => by === 'tool')).toBe(true)
  })

  test('people and CO come first of all, and the code is read before anything is switched', () => {
    expect(checks.slice(0, 2).map(({ id }) => id)).toEqual([
      'ask-about-alarm-and-health',
      'carry-a-co-meter-in',
    ])
    const readCode = checks.findIndex(({ id }) => id === 'read-the-code')
    const switched = checks.findIndex(({ state }) => state !== 'left as found')
    expect(readCode).toBeLessThan(switched)
    expect(checkById('read-the-code')).toMatchObject({ state: 'left as found' })
  })

  test('the checks that are forced first are looks that come before any meter', () => {
    const forced = checks.filter(({ danger }) => danger)
    expect(forced.length).toBeGreaterThanOrEqual(5)
    for (const { by, step } of forced) {
      expect(by).toBe('look')
      expect(['at the door', 'quick looks']).toContain(step)
    }
  })

  test('every cause’s confirming test is part of a check', () => {
    for (const { id, confirm } of causes) expect(checkById(confirm.checkId), id).toBeDefined()
  })
})

/** Everything that is read on a screen, with where it stands. */
const sentences = [
  ...causes.flatMap((cause) =>
    [
      cause.name,
      cause.mechanism,
      cause.confirm.what,
      cause.confirm.putBack ?? '',
      cause.fix.what,
      cause.comesBack,
      ...cause.hazards,
    ].map((text) => ({ where: cause.id, text, state: undefined })),
  ),
  ...causes.map(({ id, confirm }) => ({ where: id, text: confirm.what, state: confirm.state })),
  ...checks.flatMap((check) =>
    [check.name, check.what, check.putBack ?? '', check.caution ?? ''].map((text) => ({
      where: check.id,
      text,
      state: check.state,
    })),
  ),
  ...findings.flatMap(({ id, name, hint = '', values }) =>
    [name, hint, ...values].map((text) => ({ where: id, text, state: undefined })),
  ),
]

describe('what the catalogue tells people to do', () => {
  test('no sentence but the findings and the tampering itself speaks of a jumper, a bypass or an adjustable switch', () => {
    const mayName = ['jumper-or-bypass', 'general-purpose-switch-fitted', 'switch-bypassed']
    const forbidden =
      /jump(er)?\b|by-?pass|bridge|adjust|universal|general[- ]purpose|set(ting)? screw|short (it|the contact)/i
    for (const { where, text } of sentences) {
      if (mayName.includes(where)) continue
      // These tell people not to, or what to look for.
      const warns =
        /never by bridging it|is anything bridged|Has it a setting screw|hose moved to defeat/.test(text)
      if (!warns) expect(text, where).not.toMatch(forbidden)
    }
  })

  test('a bypass is only ever taken out', () => {
    const bypassed = causes.find(({ id }) => id === 'switch-bypassed')
    expect(bypassed?.fix.what).toBe('Photograph it and take it out, then find the fault that it hid.')
  })

  test('a switch is replaced only by the exact factory part, and only in the last group', () => {
    for (const { group, fix, id } of causes)
      if (group === 'the switch itself' && id !== 'switch-bypassed')
        expect(fix.what).toMatch(/exact factory part/)
      else expect(fix.what).not.toMatch(/(new|replace)[^.]*switch/i)
  })

  test('vent and intake are opened, and joints smoked, with the gas off and only the inducer running', () => {
    for (const id of [
      'open-the-vent',
      'take-the-intake-off',
      'read-with-door-off',
      'smoke-the-joints',
      'read-each-port',
    ])
      expect(checkById(id)?.state).toBe('gas off, inducer only')
    for (const { where, text, state } of sentences)
      if (/open the vent|take the intake( pipe)? off/i.test(text) && state !== undefined)
        expect(state, where).toBe('gas off, inducer only')
  })

  test('what was opened is put back before the gas is on', () => {
    for (const id of ['open-the-vent', 'take-the-intake-off', 'read-with-door-off'])
      expect(checkById(id)?.putBack).toMatch(/before the gas is on/)
  })

  test('the hose comes off the switch before it is probed or drained, power off', () => {
    expect(checkById('look-into-the-port')).toMatchObject({ state: 'power off' })
    expect(checkById('look-into-the-port')?.what).toMatch(/^Hose off the switch first/)
    expect(checkById('drain-and-read-again')?.what).toMatch(/^Power off.*hose off the switch/)
    for (const { where, text } of sentences)
      if (/\bblow\b/i.test(text)) expect(text, where).toMatch(/never blow into|would blow combustion/i)
  })

  test('water is poured with the power off and the eyes covered', () => {
    const wet = checks.filter(({ tool, name }) => tool === 'water and a measure' || /water|drain/i.test(name))
    expect(wet.length).toBeGreaterThanOrEqual(4)
    for (const { id, what, state, caution = '' } of wet) {
      if (!/pour|drain trap|trap, where/i.test(what)) continue
      expect(caution, id).toMatch(/eye protection/i)
      expect(state === 'power off' || /^Power off/.test(what), id).toBe(true)
    }
    for (const { confirm, id } of causes)
      if (/\bpour/i.test(confirm.what)) expect(confirm.state, id).toBe('power off')
  })

  test('the gauge is teed in with the furnace off, and contacts are judged by voltage', () => {
    for (const id of ['read-at-rest', 'read-a-cold-start', 'read-it-hot', 'check-opening-point'])
      expect(checkById(id)?.caution).toMatch(/tee goes in with the furnace off/)
    for (const { id, tool, caution = '', state } of checks)
      if (/voltmeter/.test(tool) && state === 'running' && /contact|pin/.test(checkById(id)?.what ?? ''))
        expect(caution, id).toMatch(/voltage across it/)
  })

  test('a roll-out switch is never just reset', () => {
    for (const { text, where } of sentences)
      if (/\breset/i.test(text))
        expect(text, where).toMatch(/never just reset|before (any|anything)|reset nothing/i)
  })
})
