import { useEffect, useState } from 'preact/hooks'
import { ask } from './ask'

const loopback = /^(?:localhost$|127\.|\[::1\])/

/** An address that means, on every device, that device itself. */
export const leadsNowhere = (address: string) => loopback.test(new URL(address).hostname)

/**
 * The address under which phones reach this server. On the laptop itself the
 * page's own address would lead each phone to itself: then the server is asked.
 */
export function useAddress(): string {
  const [address, setAddress] = useState(location.origin)
  useEffect(() => {
    if (!loopback.test(location.hostname)) return
    ask<{ addresses?: string[] }>('GET', '/door').then(
      ({ addresses }) => addresses?.[0] && setAddress(addresses[0]),
      () => {}, // the page's own address stands
    )
  }, [])
  return address
}
