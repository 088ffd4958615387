import { createHash, timingSafeEqual } from "node:crypto";
import type { Person } from "@pinwright/contract";
import type { PersonSecrets, Store } from "@pinwright/store";
import type { Place } from "../http/place.ts";
import type { Caller } from "./caller.ts";

const HOUR_MS = 60 * 60 * 1000;
/** How long a session lasts: a week in the office, a shift on the floor. Common practice, no source. */
const LASTS_MS = { office: 7 * 24 * HOUR_MS, floor: 12 * HOUR_MS } as const;

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

const base64url = (bytes: Uint8Array): string => Buffer.from(bytes).toString("base64url");

/**
 * How long a session that was found is taken for granted, ms: most of what a request asks of the store is who sends it.
 * What this server changes of people is forgotten at once; another server on the same store is so much behind.
 */
const GRANTED_MS = 1000;
/** Sessions that are taken for granted at most. */
const GRANTED = 2_000;

/** Whether two texts are the same; takes as long for every text. */
export const sameText = (a: string, b: string): boolean =>
  timingSafeEqual(Buffer.from(sha256(a)), Buffer.from(sha256(b)));

/** The cookie may say of itself that it is only ours and only for HTTPS, which browsers hold it to. */
const cookieName = (secure: boolean): string => (secure ? "__Host-pinwright" : "pinwright");

const cookie = (place: Place, value: string, seconds: number): string =>
  [
    `${cookieName(place.secure)}=${value}`,
    "Path=/",
    "HttpOnly",
    "SameSite=Strict",
    `Max-Age=${seconds}`,
    ...(place.secure ? ["Secure"] : []),
  ].join("; ");

/** The cookie that ends what the browser remembers. */
export const endCookie = (place: Place): string => cookie(place, "", 0);

function secretOf(request: Request, place: Place): string | null {
  for (const pair of (request.headers.get("cookie") ?? "").split(";")) {
    const at = pair.indexOf("=");
    if (at < 0 || pair.slice(0, at).trim() !== cookieName(place.secure)) continue;
    const value = pair.slice(at + 1).trim();
    if (/^[\w-]{43}$/.test(value)) return value;
  }
  return null;
}

/** What others may see of a person. */
export const personOf = ({ id, name, role, active, hasPassword, hasCode }: PersonSecrets): Person => ({
  id,
  name,
  role,
  active,
  hasPassword,
  hasCode,
});

export interface Started {
  readonly caller: Caller;
  readonly cookie: string;
}

/** Sessions of people who signed in. The store knows the hash of a secret that only the browser has. */
export class Sessions {
  readonly #store: Store;
  readonly #now: () => number;
  readonly #random: (bytes: number) => Uint8Array;
  #changes = 0;
  readonly #granted = new Map<string, { readonly caller: Caller; readonly until: number }>();

  constructor(store: Store, now: () => number, random: (bytes: number) => Uint8Array) {
    this.#store = store;
    this.#now = now;
    this.#random = random;
  }

  async start(person: Person, kind: "office" | "floor", place: Place): Promise<Started> {
    const secret = base64url(this.#random(32));
    const token = base64url(this.#random(32));
    const expiresAt = this.#now() + LASTS_MS[kind];
    const hash = sha256(secret);
    await this.#store.people.addSession({
      hash,
      personId: person.id,
      token,
      createdAt: new Date(this.#now()).toISOString(),
      expiresAt: new Date(expiresAt).toISOString(),
      kind,
      from: place.address,
    });
    return {
      caller: { person, sessionHash: hash, token, expiresAt },
      cookie: cookie(place, secret, LASTS_MS[kind] / 1000),
    };
  }

  /** Who sends a request; null: nobody that is signed in. */
  async find(request: Request, place: Place): Promise<Caller | null> {
    const secret = secretOf(request, place);
    if (secret === null) return null;
    const hash = sha256(secret);
    const granted = this.#granted.get(hash);
    if (granted !== undefined && this.#now() < granted.until) return granted.caller;
    const changes = this.#changes;
    const caller = await this.#byHash(hash);
    this.#granted.delete(hash);
    // What was found before a change of people says nothing any more.
    if (caller !== null && changes === this.#changes) {
      if (this.#granted.size >= GRANTED) this.#granted.clear();
      this.#granted.set(hash, {
        caller,
        until: Math.min(this.#now() + GRANTED_MS, caller.expiresAt ?? Infinity),
      });
    }
    return caller;
  }

  /** People or sessions were changed: everyone is looked up again. */
  changed(): void {
    this.#changes++;
    this.#granted.clear();
  }

  /** Whose session this is, as long as it lasts and the person may come in. */
  async #byHash(hash: string): Promise<Caller | null> {
    const session = await this.#store.people.session(hash);
    if (session === null) return null;
    const expiresAt = Date.parse(session.expiresAt);
    if (!(expiresAt > this.#now())) {
      await this.#store.people.endSession(hash);
      return null;
    }
    const person = await this.#store.people.byId(session.personId);
    if (person === null || !person.active) return null;
    return { person: personOf(person), sessionHash: hash, token: session.token, expiresAt };
  }
}
