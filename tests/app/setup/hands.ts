import { act, fireEvent, screen, within } from '@testing-library/react'

/** What a person does with a form, by the names that a screen reader gives to its controls. */

/** Types into a field, in the place of what it held. */
export const fill = (label: string | RegExp, text: string): void => {
  fireEvent.change(screen.getByLabelText(label), { target: { value: text } })
}

/** Chooses an answer of a question. */
export const choose = (question: string | RegExp, answer: string | RegExp): void => {
  const group = screen.getByRole('group', { name: question })
  fireEvent.click(within(group).getByRole('radio', { name: answer }))
}

/** Ticks a statement, or takes the tick away. */
export const tick = (statement: string | RegExp): void => {
  fireEvent.click(screen.getByRole('checkbox', { name: statement }))
}

/** Chooses from a list by the words that it shows. */
export const select = (label: string | RegExp, words: string): void => {
  const list = screen.getByRole('combobox', { name: label })
  fireEvent.change(list, {
    target: { value: within(list).getByRole<HTMLOptionElement>('option', { name: words }).value },
  })
}

/** Presses a button and waits until whatever it set going has come to rest. */
export const press = (button: string | RegExp): Promise<void> =>
  act(async () => {
    fireEvent.click(screen.getByRole('button', { name: button }))
    await new Promise((done) => setTimeout(done, 0))
  })

/** What a screen reader says of a field or a question besides its name: its hint and its error. */
export function describedBy(control: HTMLElement): string {
  const ids = control.getAttribute('aria-describedby')?.split(' ') ?? []
  return ids.map((id) => document.getElementById(id)?.textContent ?? '').join(' ')
}
