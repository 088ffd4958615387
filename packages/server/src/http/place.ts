/** Where a request came in, as the socket tells it and not the request itself. */
export interface Place {
  /** Address of whoever asks. */
  readonly address: string;
  /** Whether it came by HTTPS. */
  readonly secure: boolean;
}

/** Addresses as people write them: IPv4 inside IPv6 unpacked. */
export const plainAddress = (address: string): string => address.replace(/^::ffff:(?=\d+\.)/i, "");

/** Whether an address is this computer's own. */
export const isLoopback = (address: string): boolean => address === "::1" || /^127\./.test(address);
