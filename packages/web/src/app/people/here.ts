const HERE: readonly string[] = ["127.0.0.1", "::1", "::ffff:127.0.0.1"];

/** Whether an address is that of the computer that Pinwright runs on. */
export const isHere = (address: string): boolean => HERE.includes(address);
