import { groupedTagCode, tagLink } from '@/lib/core/tag'
import { qrPath } from './qrPath'
import styles from './tags.module.css'

/** A tag to be printed. The site is on it only where the manager asked for that. */
export type PrintedTag = { code: string; site?: string }

/** Tags with lines to cut along. They hold a link with a code, which tells a stranger nothing. */
export function TagSheet({ tags, origin }: { tags: readonly PrintedTag[]; origin: string }) {
  return (
    <ul className={styles.sheet} aria-label="Tags to print">
      {tags.map((tag) => (
        <li key={tag.code} className={styles.tag}>
          <Qr text={tagLink(origin, tag.code)} name={`QR code of tag ${groupedTagCode(tag.code)}`} />
          <span className={styles.words}>
            <span>Furnace tag</span>
            <span className={styles.code} translate="no">
              {groupedTagCode(tag.code)}
            </span>
            {tag.site !== undefined && <span className={styles.site}>{tag.site}</span>}
          </span>
        </li>
      ))}
    </ul>
  )
}

function Qr({ text, name }: { text: string; name: string }) {
  const { side, path } = qrPath(text)
  return (
    <svg
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label={name}
      className={styles.qr}
      shapeRendering="crispEdges"
    >
      <path d={path} />
    </svg>
  )
}
