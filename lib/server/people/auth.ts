import { betterAuth } from 'better-auth'
import { prismaAdapter } from 'better-auth/adapters/prisma'
import { APIError } from 'better-auth/api'
import { username } from 'better-auth/plugins'
import type { PrismaClient } from '@/prisma/generated/client'
import { foldName, longestSignInName } from './names'
import { hashPassword, isPasswordOf, longestPassword } from './passwords'
import { sessionSecret } from './secret'

const day = 24 * 60 * 60

/** Told to somebody who knew the password of a person that a manager has deactivated. */
export const deactivated = 'DEACTIVATED'

/**
 * The sign-in library, set up for name and password with sessions in the database. None of its own web addresses is
 * served: the routes in app/api/auth call it, after checks of their own (origin, wrong guesses).
 *
 * @param secure whether the browser's connection is https: the cookie is then marked Secure
 */
export function makeAuth(database: PrismaClient, dataFolder: string, secure: boolean) {
  return betterAuth({
    appName: 'Inchwater',
    // No interactive transactions: one held across an await would lock the log's own connection out.
    database: prismaAdapter(database, { provider: 'sqlite', transaction: false }),
    secret: sessionSecret(dataFolder),
    baseURL: secure ? 'https://localhost' : 'http://localhost',
    telemetry: { enabled: false },
    // Guesses are limited in ./guesses, by account and by an address that no client can forge.
    rateLimit: { enabled: false },
    logger: { level: 'error' },
    advanced: {
      cookiePrefix: 'inchwater',
      useSecureCookies: secure,
      ipAddress: { disableIpTracking: true },
    },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      maxPasswordLength: longestPassword,
      password: { hash: hashPassword, verify: ({ hash, password }) => isPasswordOf(hash, password) },
    },
    user: {
      modelName: 'person',
      additionalFields: {
        role: { type: 'string', input: false, required: true },
        active: { type: 'boolean', input: false, required: true },
      },
    },
    // The cookie lives as long as browsers let it (400 days, RFC 6265bis 5.5); how long a session may lie idle is
    // judged in ./session by updatedAt, which moves on once a day while the session is used.
    session: {
      expiresIn: 400 * day,
      updateAge: day,
      fields: { userId: 'personId' },
      cookieCache: { enabled: false },
    },
    account: { fields: { userId: 'personId' } },
    databaseHooks: {
      session: {
        create: {
          before: async (session) => {
            const person = await database.person.findUnique({
              where: { id: session.userId },
              select: { active: true },
            })
            if (!person?.active)
              throw new APIError('FORBIDDEN', { code: deactivated, message: 'Deactivated.' })
          },
        },
      },
    },
    plugins: [
      username({
        displayUsername: false,
        minUsernameLength: 1,
        maxUsernameLength: longestSignInName,
        usernameNormalization: foldName,
        usernameValidator: () => true,
        schema: { user: { fields: { username: 'signInName' } } },
      }),
    ],
  })
}

export type Auth = ReturnType<typeof makeAuth>
