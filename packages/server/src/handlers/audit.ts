import type { Store } from "@pinwright/store";
import type { Place } from "../http/place.ts";

/** What is written down about accounts, sessions, books and back-ups. */
export type AuditAction =
  | "set-up"
  | "sign-in"
  | "sign-in-refused"
  | "sign-out"
  | "session-ended"
  | "in-person"
  | "person-added"
  | "person-changed"
  | "book-added"
  | "book-archived"
  | "book-unarchived"
  | "book-imported"
  | "snapshot-restored"
  | "book-released"
  | "back-up";

/** Writes down who did what, and from where. */
export class Audit {
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  write(action: AuditAction, personName: string, detail: string, place: Place): Promise<void> {
    return this.#store.audit.add({ action, personName, detail, from: place.address });
  }
}
