import { FindScreen } from '../find/FindScreen'

export default function FindPage() {
  return <FindScreen />
}
