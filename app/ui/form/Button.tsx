import type { AnchorHTMLAttributes, ButtonHTMLAttributes, MouseEvent } from 'react'
import { classNames } from '../classNames'
import styles from './button.module.css'

/** Main: the one thing to do here. Plain: another thing. Quiet: a thing seldom done. Danger: opens the danger sheet. */
export type ButtonKind = 'main' | 'plain' | 'quiet' | 'danger'

type Shared = { kind?: ButtonKind; wide?: boolean }

type ButtonProps = Shared & Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'style'> & { busy?: string }

/** A button with words. `busy` says what is going on; meanwhile pressing it again does nothing. */
export function Button({ kind = 'plain', wide, busy, type = 'button', className, ...rest }: ButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-disabled={busy ? true : undefined}
      onClick={busy ? stop : rest.onClick}
      className={classNames(styles.button, styles[kind], wide && styles.wide, className)}
    >
      {busy ?? rest.children}
    </button>
  )
}

// A busy button keeps the focus, which a disabled one would lose; it only does nothing more.
function stop(event: MouseEvent) {
  event.preventDefault()
}

type LinkProps = Shared & Omit<AnchorHTMLAttributes<HTMLAnchorElement>, 'style'> & { href: string }

/** A link that looks as important as a button: it goes somewhere, and changes nothing. */
export function ButtonLink({ kind = 'plain', wide, className, ...rest }: LinkProps) {
  return <a {...rest} className={classNames(styles.button, styles[kind], wide && styles.wide, className)} />
}
