/**
 * The few parts of the ZIP format that a back-up uses, always with 64-bit sizes: APPNOTE.TXT 6.3.10 sections 4.3.7
 * (local header), 4.3.12 (central directory), 4.3.14 and 4.3.15 (64-bit end and its locator), 4.3.16 (end), 4.5.3
 * (64-bit extra field).
 */
export const LOCAL = 0x04034b50;
export const CENTRAL = 0x02014b50;
export const END = 0x06054b50;
export const END_64 = 0x06064b50;
export const LOCATOR_64 = 0x07064b50;

export const LOCAL_BYTES = 30;
export const CENTRAL_BYTES = 46;
export const END_BYTES = 22;
export const END_64_BYTES = 56;
export const LOCATOR_64_BYTES = 20;

/** Id of the extra field that holds 64-bit sizes. */
export const EXTRA_64 = 1;
/** In a 32-bit field: the value is in the 64-bit field. */
export const SEE_64 = 0xffffffff;
export const SEE_64_SHORT = 0xffff;

/** A file inside a ZIP. */
export interface ZipEntry {
  readonly name: string;
  readonly crc: number;
  readonly packedBytes: number;
  readonly bytes: number;
  /** Where its local header starts. */
  readonly offset: number;
}
