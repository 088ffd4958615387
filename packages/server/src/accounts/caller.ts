import type { Person } from "@pinwright/contract";
import type { Actor } from "@pinwright/store";

/** Who asks. */
export interface Caller {
  readonly person: Person;
  /** Hash of the session's secret; null while there are no accounts. */
  readonly sessionHash: string | null;
  readonly token: string;
  /** When the session ends, ms since 1970; null: never. */
  readonly expiresAt: number | null;
}

/** Who is at this computer while there are no accounts. */
export const LOCAL_PERSON: Person = {
  id: "local",
  name: "Owner",
  role: "owner",
  active: true,
  hasPassword: false,
  hasCode: false,
};

/** The caller as the store notes who acted. */
export const actorOf = ({ person }: Caller): Actor => ({ personId: person.id, personName: person.name });
