'use client'

import { type ReactNode, useEffect, useRef, useState } from 'react'
import styles from './charts.module.css'

/** Width while nothing is measured yet: on the server, and on paper that nobody looked at before. */
const usualWidth = 640

type Props = {
  /** Draws the picture so wide, in pixels, or wider: then it scrolls within this frame. */
  children: (width: number) => ReactNode
  /** The key to the picture, above it and on the same page of paper. */
  above?: ReactNode
  /** What is said below the picture: how it is to be read. */
  legend?: ReactNode
  /** Which end is in sight where it is wider than its room. */
  begins?: 'at the left' | 'at the right'
}

/** Room for a picture, as wide as the sheet lets it be. A wider one scrolls. */
export function ChartFrame({ children, above, legend, begins = 'at the left' }: Props) {
  const frame = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(usualWidth)
  useEffect(() => {
    const element = frame.current
    if (element === null || typeof ResizeObserver === 'undefined') return
    const observer = new ResizeObserver(([entry]) => {
      const measured = Math.floor(entry?.contentRect.width ?? 0)
      // A printer or a folded page has no width of its own.
      if (measured > 0) setWidth(measured)
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  useEffect(() => {
    const element = frame.current
    // Drawn at another width, the right end is elsewhere.
    if (element !== null && width > 0)
      element.scrollLeft = begins === 'at the right' ? element.scrollWidth : 0
  }, [width, begins])
  return (
    <figure className={styles.figure}>
      {above}
      <div ref={frame} className={styles.frame}>
        {children(width)}
      </div>
      {legend && <figcaption className={styles.legend}>{legend}</figcaption>}
    </figure>
  )
}
