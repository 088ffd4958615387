/** What can go wrong between the server and an instrument. */
export type InstrumentTrouble =
  /** Nobody answers at the address, or the device file can't be opened. */
  | "not-reached"
  /** No whole answer came in time. */
  | "time-out"
  /** The other side ended the connection. */
  | "ended"
  /** An answer that goes on and on. */
  | "too-long"
  /** An answer that is not what was asked for. */
  | "not-understood"
  /** The instrument says itself that something is wrong. */
  | "refused"
  /** Too many wait for it already. */
  | "busy"
  /** It is of a kind that does not do this. */
  | "not-measured";

/** An instrument did not do what it was asked; `says` is what came from it or from the system. */
export class InstrumentError extends Error {
  readonly trouble: InstrumentTrouble;
  readonly asked: string;
  readonly says: string;

  constructor(trouble: InstrumentTrouble, asked: string, says: string) {
    super(`${trouble}: ${asked}${says === "" ? "" : ` (${says})`}`);
    this.name = "InstrumentError";
    this.trouble = trouble;
    this.asked = asked;
    this.says = says;
  }
}
