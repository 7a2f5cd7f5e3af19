import type { NextConfig } from 'next'

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  // The security headers are set by lib/server/start.ts, which also makes the nonce.
}

export default config
