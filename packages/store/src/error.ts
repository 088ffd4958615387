/** Why a store cannot be used at all. */
export type StoreErrorCode =
  /** Written by a later program than this one. */
  | "newer"
  /** The file or database holds something else. */
  | "not-a-store"
  /** The file or database cannot be opened. */
  | "unreachable"
  /** What is kept does not match its own checksum, or a back-up is incomplete. */
  | "damaged"
  /** A back-up can only be restored where nothing is kept yet. */
  | "not-empty"
  /** A text that the database cannot hold as it is. */
  | "bad-text";

/** A failure of the store itself, told so that its owner can act. What a person asks for in vain is a `Refusal`. */
export class StoreError extends Error {
  readonly code: StoreErrorCode;

  constructor(code: StoreErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = "StoreError";
    this.code = code;
  }
}
