import { hostname, networkInterfaces } from "node:os";
import { isLoopback } from "../http/place.ts";

/** Names and addresses of this computer. */
export interface OwnNames {
  /** Lower case: `office`, `office.local`, `localhost`. */
  readonly dns: readonly string[];
  /** Addresses of the network, then those of the computer itself. */
  readonly ips: readonly string[];
  /** Those of `ips` by which other devices reach this one. */
  readonly network: readonly string[];
}

/** A name that can stand in a certificate. */
const DNS_NAME = /^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?)*$/;

/** What this computer is called now. Addresses that only hold on one wire (`fe80::`) are left out. */
export function ownNames(): OwnNames {
  const host = hostname().toLowerCase();
  const dns = new Set(["localhost"]);
  if (DNS_NAME.test(host)) {
    dns.add(host);
    if (!host.includes(".")) dns.add(`${host}.local`);
  }
  const network = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(
      (address) => !address.internal && !isLoopback(address.address) && !/^fe80:/i.test(address.address),
    )
    .map((address) => address.address)
    .sort();
  return { dns: [...dns], ips: [...network, "127.0.0.1", "::1"], network };
}

/** A name or address as it stands in a URL. */
export const inUrl = (name: string): string => (name.includes(":") ? `[${name}]` : name);
