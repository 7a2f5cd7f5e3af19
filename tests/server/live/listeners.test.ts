import { expect, test } from 'vitest'
import type { Role } from '@/lib/records/envelope'
import { type Listener, makeListeners } from '@/lib/server/live/listeners'

const listen = (personId: string, role: Role, told = 0) => {
  const heard: number[] = []
  const listener: Listener & { ended: boolean; checks: number } = {
    personId,
    role,
    told,
    ended: false,
    checks: 0,
    tell: (seq) => void heard.push(seq),
    async check() {
      listener.checks += 1
    },
    end() {
      listener.ended = true
    },
  }
  return { listener, heard }
}

test('announce(newest) tells each role of what it may see, once', () => {
  const listeners = makeListeners()
  const manager = listen('p1', 'manager')
  const technician = listen('p2', 'technician', 4)
  listeners.add(manager.listener)
  listeners.add(technician.listener)
  const asked: Role[] = []
  const newest = (role: Role) => {
    asked.push(role)
    return role === 'manager' ? 9 : 4
  }
  listeners.announce(newest)
  listeners.announce(newest)
  expect([manager.heard, technician.heard]).toEqual([[9], []])
  expect(asked).toEqual(['manager', 'technician', 'manager', 'technician'])
})

test('add(listener) is refused past the limit of one person, and past that of all', () => {
  const listeners = makeListeners({ atAll: 3, ofOnePerson: 2 })
  const added = ['p1', 'p1', 'p1', 'p2', 'p3'].map((id) => listeners.add(listen(id, 'manager').listener))
  expect(added).toEqual([true, true, false, true, false])
  expect(listeners.size()).toBe(3)
})

test('remove(listener) makes room, and tells it nothing more', () => {
  const listeners = makeListeners({ atAll: 1, ofOnePerson: 1 })
  const first = listen('p1', 'manager')
  listeners.add(first.listener)
  listeners.remove(first.listener)
  expect(listeners.add(listen('p2', 'manager').listener)).toBe(true)
  listeners.announce(() => 1)
  expect(first.heard).toEqual([])
})

test('check() and endAll() reach every listener', async () => {
  const listeners = makeListeners()
  const all = ['p1', 'p2'].map((id) => listen(id, 'technician').listener)
  for (const listener of all) listeners.add(listener)
  await listeners.check()
  listeners.endAll()
  expect(all.map(({ checks, ended }) => [checks, ended])).toEqual([
    [1, true],
    [1, true],
  ])
})
