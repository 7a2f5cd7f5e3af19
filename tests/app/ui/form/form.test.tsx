import { act, render, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { useState } from 'react'
import { expect, test, vi } from 'vitest'
import { Button, ButtonLink } from '@/app/ui/form/Button'
import { Check } from '@/app/ui/form/Check'
import { Choice } from '@/app/ui/form/Choice'
import { Form } from '@/app/ui/form/Form'
import { NumberPad } from '@/app/ui/form/NumberPad'
import { Select } from '@/app/ui/form/Select'
import { TextArea } from '@/app/ui/form/TextArea'
import { TextField } from '@/app/ui/form/TextField'
import type { PressureUnit } from '@/lib/core/pressure'
import { accessibilityFaults } from '../accessibilityFaults'

const actions = [
  { value: 'closes', words: 'Closes' },
  { value: 'opens', words: 'Opens' },
  { value: 'not stated', words: 'They didn’t say', hint: 'Kept open' },
] as const

test('every control has its label, and its hint and error as its description', async () => {
  const { container } = render(
    <form>
      <TextField name="part" label="Part number" hint="As printed" error="It can’t be empty." exact />
      <TextArea name="answer" label="Exact answer" hint="Word for word" />
      <Select
        name="source"
        label="Source"
        options={[{ value: 'd', words: 'Distributor' }]}
        error="Choose one."
        none="–"
      />
      <Choice
        legend="Does it close or open?"
        name="action"
        options={actions}
        hint="Ask"
        error="Choose one."
      />
      <Check name="read-back" label="I read it back" hint="Digit by digit" />
    </form>,
  )
  const described = (role: string, name: string) => {
    const ids = screen.getByRole(role, { name }).getAttribute('aria-describedby')?.split(' ') ?? []
    return ids.map((id) => document.getElementById(id)?.textContent)
  }
  expect(described('textbox', 'Part number')).toEqual(['As printed', 'It can’t be empty.'])
  expect(described('textbox', 'Exact answer')).toEqual(['Word for word'])
  expect(described('combobox', 'Source')).toEqual(['Choose one.'])
  expect(described('group', 'Does it close or open?')).toEqual(['Ask', 'Choose one.'])
  expect(described('checkbox', 'I read it back')).toEqual(['Digit by digit'])
  expect(screen.getByRole('textbox', { name: 'Part number' }).getAttribute('aria-invalid')).toBe('true')
  expect(screen.getByRole('textbox', { name: 'Exact answer' }).getAttribute('aria-invalid')).toBeNull()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('TextField for exact text lets no keyboard improve what is typed', () => {
  render(<TextField name="part" label="Part number" exact />)
  const field = screen.getByRole('textbox')
  expect(
    ['autocapitalize', 'autocorrect', 'autocomplete', 'spellcheck', 'translate'].map((name) =>
      field.getAttribute(name),
    ),
  ).toEqual(['off', 'off', 'off', 'false', 'no'])
})

function Asked() {
  const [action, setAction] = useState<(typeof actions)[number]['value'] | null>(null)
  return (
    <Choice legend="Close or open?" name="action" options={actions} value={action} onChoose={setAction} />
  )
}

test('Choice has nothing chosen until somebody chooses, and then the arrow keys move within it', async () => {
  // jsdom has no CSS.escape, which user-event needs to find the radios of one name; this name needs no escaping.
  vi.stubGlobal('CSS', { escape: (name: string) => name })
  const person = userEvent.setup()
  render(<Asked />)
  expect(screen.queryByRole('radio', { checked: true })).toBeNull()
  await person.click(screen.getByText('Closes'))
  await person.keyboard('{ArrowDown}')
  expect(screen.getByRole<HTMLInputElement>('radio', { checked: true }).value).toBe('opens')
  vi.unstubAllGlobals()
})

test('Choice without state of its own sends what was chosen with the form', async () => {
  render(
    <form aria-label="asked">
      <Choice legend="Close or open?" name="action" options={actions} defaultValue="closes" />
    </form>,
  )
  await userEvent.click(screen.getByRole('radio', { name: /They didn’t say/ }))
  expect(new FormData(screen.getByRole<HTMLFormElement>('form')).get('action')).toBe('not stated')
})

function Pad({ first = '' }: { first?: string }) {
  const [text, setText] = useState(first)
  const [unit, setUnit] = useState<PressureUnit>('inH2O')
  return (
    <NumberPad
      label="Reading"
      name="reading"
      value={text}
      onType={setText}
      unit={unit}
      units={['inH2O', 'Pa']}
      onUnit={setUnit}
    />
  )
}

test('NumberPad types into its field, by key and by keyboard alike', async () => {
  const person = userEvent.setup()
  const { container } = render(<Pad />)
  const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Reading' })
  for (const key of ['0', 'Decimal point', '5']) await person.click(screen.getByRole('button', { name: key }))
  expect(field.value).toBe('0.5')
  await person.type(field, '8')
  await person.click(screen.getByRole('button', { name: 'Minus' }))
  expect(field.value).toBe('-0.58')
  await person.click(screen.getByRole('button', { name: 'Delete last' }))
  expect(field.value).toBe('-0.5')
  expect(await accessibilityFaults(container)).toEqual([])
})

test('NumberPad puts a digit where the caret is, and types on from there', async () => {
  const person = userEvent.setup()
  render(<Pad first="0.8" />)
  const field = screen.getByRole<HTMLInputElement>('textbox')
  await person.click(field)
  field.setSelectionRange(2, 2)
  await person.click(screen.getByRole('button', { name: '5' }))
  await person.click(screen.getByRole('button', { name: '1' }))
  expect(field.value).toBe('0.518')
  expect(document.activeElement).toBe(field)
})

test('NumberPad keeps a phone’s own keyboard away', () => {
  render(<Pad />)
  expect(screen.getByRole('textbox').getAttribute('inputmode')).toBe('none')
})

test('NumberPad changes the unit without touching what was typed', async () => {
  render(<Pad first="0.58" />)
  await userEvent.click(screen.getByRole('radio', { name: 'Pa' }))
  expect(screen.getByRole<HTMLInputElement>('textbox').value).toBe('0.58')
  expect(screen.getByRole<HTMLInputElement>('radio', { name: 'Pa' }).checked).toBe(true)
})

test('Button sends no form unless it is told to', async () => {
  const send = vi.fn((event: { preventDefault: () => void }) => event.preventDefault())
  render(
    <form onSubmit={send}>
      <Button>Not now</Button>
      <Button type="submit" kind="main">
        Keep
      </Button>
    </form>,
  )
  await userEvent.click(screen.getByRole('button', { name: 'Not now' }))
  expect(send).not.toHaveBeenCalled()
  await userEvent.click(screen.getByRole('button', { name: 'Keep' }))
  expect(send).toHaveBeenCalledTimes(1)
})

test('Button that is busy says with what, keeps the focus, and does nothing twice', async () => {
  const send = vi.fn((event: { preventDefault: () => void }) => event.preventDefault())
  const press = vi.fn()
  render(
    <form onSubmit={send}>
      <Button type="submit" busy="Sending…" onClick={press}>
        Send
      </Button>
    </form>,
  )
  const button = screen.getByRole('button', { name: 'Sending…' })
  await userEvent.click(button)
  expect([press.mock.calls.length, send.mock.calls.length]).toEqual([0, 0])
  expect(document.activeElement).toBe(button)
  expect(button.getAttribute('aria-disabled')).toBe('true')
})

test('ButtonLink is a link', () => {
  render(<ButtonLink href="/log">To the log</ButtonLink>)
  expect(screen.getByRole('link', { name: 'To the log' }).getAttribute('href')).toBe('/log')
})

const fuels = [
  { value: 'gas', words: 'Natural gas' },
  { value: 'propane', words: 'Propane' },
] as const

/** Three questions; what is typed or chosen answers each, and only an answered form is saved. */
function Asking({ saved }: { saved: () => void }) {
  const [tried, setTried] = useState(false)
  const [answers, setAnswers] = useState({ name: '', fuel: '', stage: '' })
  const change = (part: Partial<typeof answers>) => setAnswers({ ...answers, ...part })
  const gap = (field: keyof typeof answers) => (tried && answers[field] === '' ? 'Answer this.' : undefined)
  const save = () => {
    setTried(true)
    if (Object.values(answers).includes('')) return false
    saved()
    return true
  }
  return (
    <Form save={save}>
      <TextField
        name="name"
        label="Name"
        value={answers.name}
        onChange={(event) => change({ name: event.target.value })}
        error={gap('name')}
      />
      <Choice
        legend="Which fuel?"
        name="fuel"
        options={fuels}
        value={answers.fuel === '' ? null : (answers.fuel as 'gas')}
        onChoose={(fuel) => change({ fuel })}
        error={gap('fuel')}
      />
      <details>
        <summary>More</summary>
        <Select
          name="stage"
          label="Stage"
          none="Choose one"
          options={[{ value: 'low', words: 'Low fire' }]}
          value={answers.stage}
          onChange={(event) => change({ stage: event.target.value })}
          error={gap('stage')}
        />
      </details>
      <Button type="submit">Save</Button>
    </Form>
  )
}

test('Form that is not answered says above how many answers are missing, and has the focus on the first of them', async () => {
  const person = userEvent.setup()
  const { container } = render(<Asking saved={() => {}} />)
  expect(screen.queryByRole('navigation')).toBeNull()
  await person.click(screen.getByRole('button', { name: 'Save' }))
  const missing = screen.getByRole('navigation', { name: 'Answers to put right' })
  expect(within(missing).getByRole('alert').textContent).toBe('3 answers are missing or not clear')
  expect(
    within(missing)
      .getAllByRole('link')
      .map((link) => link.textContent),
  ).toEqual(['Name', 'Which fuel?', 'Stage'])
  expect(missing.compareDocumentPosition(screen.getByRole('textbox', { name: 'Name' }))).toBe(
    Node.DOCUMENT_POSITION_FOLLOWING,
  )
  expect(document.activeElement).toBe(screen.getByRole('textbox', { name: 'Name' }))
  expect(await accessibilityFaults(container)).toEqual([])
})

test('Form leads by keyboard to each missing answer, of a group to its first, and unfolds what is folded away', async () => {
  const person = userEvent.setup()
  render(<Asking saved={() => {}} />)
  await person.click(screen.getByRole('button', { name: 'Save' }))
  // The first of them is gone to by itself; only then does the keyboard go elsewhere.
  await vi.waitFor(() => expect(document.activeElement).toBe(screen.getByRole('textbox', { name: 'Name' })))
  const follow = async (name: string) => {
    screen.getByRole('link', { name }).focus()
    await person.keyboard('{Enter}')
  }
  await follow('Which fuel?')
  expect(document.activeElement).toBe(screen.getByRole('radio', { name: 'Natural gas' }))
  expect(screen.getByText('More').closest('details')!.open).toBe(false)
  await follow('Stage')
  expect(screen.getByText('More').closest('details')!.open).toBe(true)
  expect(document.activeElement).toBe(screen.getByRole('combobox', { name: 'Stage' }))
})

test('Form counts what is still missing as it is answered, and goes to the first again at the next try', async () => {
  const person = userEvent.setup()
  const saved = vi.fn()
  render(<Asking saved={saved} />)
  const save = screen.getByRole('button', { name: 'Save' })
  await person.click(save)
  await person.type(screen.getByRole('textbox', { name: 'Name' }), 'Orrin')
  await person.click(screen.getByRole('radio', { name: 'Propane' }))
  expect(screen.getByText('1 answer is missing or not clear')).toBeDefined()
  await person.click(save)
  expect(document.activeElement).toBe(screen.getByRole('combobox', { name: 'Stage' }))
  expect(saved).not.toHaveBeenCalled()
  await person.selectOptions(screen.getByRole('combobox', { name: 'Stage' }), 'Low fire')
  expect(screen.queryByRole('navigation')).toBeNull()
  await person.click(save)
  expect(saved).toHaveBeenCalledTimes(1)
})

test('Form pressed twice while it saves saves once', async () => {
  const person = userEvent.setup()
  let finish = (_saved: boolean) => {}
  const save = vi.fn(() => new Promise<boolean>((done) => (finish = done)))
  render(
    <Form save={save}>
      <Button type="submit">Save</Button>
    </Form>,
  )
  await person.click(screen.getByRole('button', { name: 'Save' }))
  await person.click(screen.getByRole('button', { name: 'Save' }))
  expect(save).toHaveBeenCalledTimes(1)
  await act(async () => finish(true))
  await person.click(screen.getByRole('button', { name: 'Save' }))
  expect(save).toHaveBeenCalledTimes(2)
  await act(async () => finish(true))
})
