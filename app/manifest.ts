import type { MetadataRoute } from 'next'

/** What a phone shows once Inchwater stands on its home screen. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/',
    name: 'Inchwater',
    short_name: 'Inchwater',
    description: 'Verified pressure-switch setpoints and symptom histories of a heating-service team.',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: '#0f1416',
    theme_color: '#0b5566',
    icons: [
      { src: '/icon.svg', type: 'image/svg+xml', sizes: 'any' },
      { src: '/icon1.png', type: 'image/png', sizes: '192x192' },
      // With room around the drawing, because phones cut it to a shape of their own.
      { src: '/icon2.png', type: 'image/png', sizes: '512x512', purpose: 'maskable' },
    ],
  }
}
