import type { Role } from '@/lib/records/envelope'

/** An open screen that wants to be told when there is something new. */
export type Listener = {
  personId: string
  role: Role
  /** The newest number it was told of, or has examined itself. */
  told: number
  /** Says that there is something new, up to this number. */
  tell(seq: number): void
  /** Looks whether its session still holds; it ends itself where it does not. */
  check(): Promise<void>
  end(): void
}

/** Whom to tell, of one data folder. Each open screen costs a connection and this one small object. */
export type Listeners = {
  /** @returns false when there are too many, of one person or at all */
  add(listener: Listener): boolean
  remove(listener: Listener): void
  /** Tells each listener whose role may see something newer than it was told of. */
  announce(newest: (role: Role) => number): void
  /** Tells each listener that there is something new beside the log. */
  nudge(): void
  /** Has each listener look after its session. */
  check(): Promise<void>
  endAll(): void
  size(): number
}

export type Limits = { atAll: number; ofOnePerson: number }

/** Screens that are in sight are few; these are ten times what a large team needs (common practice, no source). */
export const usualLimits: Limits = { atAll: 500, ofOnePerson: 12 }

export function makeListeners(limits: Limits = usualLimits): Listeners {
  const listeners = new Set<Listener>()
  return {
    add(listener) {
      const own = [...listeners].filter(({ personId }) => personId === listener.personId).length
      if (listeners.size >= limits.atAll || own >= limits.ofOnePerson) return false
      listeners.add(listener)
      return true
    },
    remove: (listener) => void listeners.delete(listener),
    announce(newest) {
      const newestOf = new Map<Role, number>()
      for (const listener of listeners) {
        const seq = newestOf.get(listener.role) ?? newest(listener.role)
        newestOf.set(listener.role, seq)
        if (seq <= listener.told) continue
        listener.told = seq
        listener.tell(seq)
      }
    },
    nudge() {
      for (const listener of listeners) listener.tell(listener.told)
    },
    async check() {
      await Promise.all([...listeners].map((listener) => listener.check()))
    },
    endAll() {
      for (const listener of [...listeners]) listener.end()
    },
    size: () => listeners.size,
  }
}
