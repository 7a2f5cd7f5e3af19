import type { Metadata, Viewport } from 'next'
import { cookies } from 'next/headers'
import type { ReactNode } from 'react'
import { buildId } from './buildId'
import './global.css'
import { Shell } from './ui/shell/Shell'
import { themeCookie, themeOf } from './ui/shell/theme'

export const metadata: Metadata = {
  title: { default: 'Inchwater', template: '%s · Inchwater' },
  description: 'Verified pressure-switch setpoints and symptom histories of a heating-service team.',
  robots: { index: false, follow: false },
  formatDetection: { telephone: false, date: false, address: false, email: false },
}

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  colorScheme: 'light dark',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f1ece1' },
    { media: '(prefers-color-scheme: dark)', color: '#0f1416' },
  ],
}

/**
 * Reading the cookies also makes every page dynamic, which it must be: the nonce of the content-security policy is
 * new with each request, and only a page made for that request carries it.
 */
export default async function RootLayout({ children }: { children: ReactNode }) {
  const theme = themeOf((await cookies()).get(themeCookie)?.value)
  return (
    <html lang="en" data-theme={theme} data-build={buildId()}>
      <body>
        <Shell>{children}</Shell>
      </body>
    </html>
  )
}
