import { Empty } from './ui/answers/Empty'

/** An address that leads nowhere. */
export default function NotFound() {
  return (
    <Empty
      page
      what="There is nothing at this address"
      why="It may have been copied in part, or it names a record that this device has not received yet."
      todo={<a href="/">Go to Find</a>}
    />
  )
}
