/** `npm run recover-manager [-- "NAME"]` prints a one-time link by which a manager sets a new password. */
import { localAddress, portOf, readTransport } from '../http/transport'
import { openData } from '../openData'
import { addressOfLink } from './linkAddress'
import { recoverManager } from './recover'
import { store } from './store'

openData()
const { database, close } = store()
const recovered = recoverManager(database, process.argv[2], new Date())
if (recovered.ok) {
  const { name, secret } = recovered.value
  const address = localAddress(readTransport(process.env), portOf(process.env.PORT))
  console.log(
    `With this link ${name} sets a new password. It works once, for a day, while the server runs:\n`,
  )
  console.log(`    ${addressOfLink(address, 'reset', secret)}\n`)
  console.log('From another machine, put the address by which that one reaches this server in front.')
} else {
  console.error(recovered.problem.message)
  process.exitCode = 1
}
await close()
