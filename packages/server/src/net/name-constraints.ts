import { BlockList, isIP } from "node:net";

/** Object identifier of the extension (RFC 5280, 4.2.1.10). */
export const NAME_CONSTRAINTS = "2.5.29.30";

const zeros = (count: number): number[] => Array<number>(count).fill(0);

/** Networks that nobody on the internet is in (RFC 1918, 3927, 4193) and the computer itself. */
const NETWORKS = [
  { family: "ipv4", address: "10.0.0.0", prefix: 8, bytes: [10, 0, 0, 0, 255, 0, 0, 0] },
  { family: "ipv4", address: "172.16.0.0", prefix: 12, bytes: [172, 16, 0, 0, 255, 240, 0, 0] },
  { family: "ipv4", address: "192.168.0.0", prefix: 16, bytes: [192, 168, 0, 0, 255, 255, 0, 0] },
  { family: "ipv4", address: "169.254.0.0", prefix: 16, bytes: [169, 254, 0, 0, 255, 255, 0, 0] },
  { family: "ipv4", address: "127.0.0.0", prefix: 8, bytes: [127, 0, 0, 0, 255, 0, 0, 0] },
  { family: "ipv6", address: "fc00::", prefix: 7, bytes: [0xfc, ...zeros(15), 0xfe, ...zeros(15)] },
  { family: "ipv6", address: "::1", prefix: 128, bytes: [...zeros(15), 1, ...Array<number>(16).fill(255)] },
] as const;

/** Ends of names that no name on the internet has: RFC 6762, 6761, 8375; `internal` by ICANN; `lan` by custom. */
const ENDS = ["local", "localhost", "lan", "internal", "home.arpa"] as const;

const isOfEnd = (name: string): boolean => ENDS.some((end) => name === end || name.endsWith(`.${end}`));

/** Addresses of local networks: the authority vouches for no others. */
export function isLocalAddress(ip: string): boolean {
  const family = isIP(ip);
  if (family === 0) return false;
  const networks = new BlockList();
  for (const { address, prefix, family: of } of NETWORKS) networks.addSubnet(address, prefix, of);
  return networks.check(ip, family === 4 ? "ipv4" : "ipv6");
}

/** A value in DER: tag, length, bytes. */
function der(tag: number, bytes: readonly number[]): number[] {
  const { length } = bytes;
  if (length < 0x80) return [tag, length, ...bytes];
  if (length < 0x100) return [tag, 0x81, length, ...bytes];
  return [tag, 0x82, length >> 8, length & 0xff, ...bytes];
}

const SEQUENCE = 0x30;
const PERMITTED = 0xa0;
const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;

const dnsName = (name: string): number[] => der(DNS_NAME, [...Buffer.from(name, "ascii")]);

/**
 * What the authority may vouch for: names and addresses of local networks, and this computer's own name. Whoever
 * steals its key can pass for this server, but not for a bank.
 */
export function encodeNameConstraints(hostNames: readonly string[]): Uint8Array<ArrayBuffer> {
  const names = [...ENDS, ...hostNames.filter((name) => !isOfEnd(name))];
  const bases = [...names.map(dnsName), ...NETWORKS.map(({ bytes }) => der(IP_ADDRESS, bytes))];
  const subtrees = bases.flatMap((base) => der(SEQUENCE, base));
  return new Uint8Array(der(SEQUENCE, der(PERMITTED, subtrees)));
}

/** Whether an authority with this extension may vouch for a name. */
export const isPermitted = (constraints: Uint8Array, name: string): boolean =>
  isOfEnd(name) || Buffer.from(constraints).includes(Buffer.from(der(SEQUENCE, dnsName(name))));
