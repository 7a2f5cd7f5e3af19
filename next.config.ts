import type { NextConfig } from 'next'

// The security headers are not set here: lib/server/http makes them, with the nonce of each request.
const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  // Types are checked by `npm test`; checking them again would only make a first start slower.
  typescript: { ignoreBuildErrors: true },
  turbopack: {
    resolveAlias: { '@stdlib/assert-has-generator-support': './.config/hasGenerators.cjs' },
  },
}

export default config
