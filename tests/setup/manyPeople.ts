/** Who is on the team of a log that is made large for measuring. Invented. */
export const manyPeople = {
  technician: {
    id: '5b0c6a1e-3f4d-4a58-9d0e-1c7a52e0bfff',
    name: 'Jory Haldane-Wix',
    role: 'technician',
    password: 'measured twice cut once',
  },
} as const
