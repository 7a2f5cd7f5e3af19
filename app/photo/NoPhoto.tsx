import { Empty } from '../ui/answers/Empty'

/** The address names no photo that is on this device. */
export const NoPhoto = () => (
  <Empty
    page
    what="This photo is not on this device"
    why="The address may be cut short, or the photo was recorded elsewhere and has not reached this device."
    todo={<a href="/">Go to Find</a>}
  />
)
