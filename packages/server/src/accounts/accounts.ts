import { atLeast, type NewPerson, type Person, type PersonPatch, type Role } from "@pinwright/contract";
import type { NewPersonRow, Store } from "@pinwright/store";
import { isLoopback } from "../http/place.ts";
import { done, Refused } from "../http/problem.ts";
import type { Secrets } from "./secrets.ts";
import { personOf } from "./sessions.ts";
import { TryLimit } from "./tries.ts";

/** Failures that cost no wait: of one name, and from one address, which a workshop may share. */
const FREE = { name: 5, address: 20 } as const;

/** How long a list of people is taken for granted. */
const KNOWN_MS = 1000;

const FLOOR_CODE = /^\d{4,8}$/;
const TOO_HIGH = "Only a builder or a viewer can have a floor code: four digits must not open more.";

const mayHaveCode = (role: Role): boolean => !atLeast(role, "lead");

function refuseCode(): never {
  throw new Refused("bad-request", TOO_HIGH, { places: [{ at: "code", expected: "no code for this role" }] });
}

/** Accounts: who there is, and whether someone is who they say. */
export class Accounts {
  readonly #store: Store;
  readonly #secrets: Secrets;
  readonly #byName: TryLimit;
  readonly #byAddress: TryLimit;
  readonly #now: () => number;
  #exist = false;
  #known: { readonly people: Promise<readonly Person[]>; readonly until: number } | null = null;
  /** Changes of accounts are made one after the other, so that of two last owners one stays. */
  #turn: Promise<unknown> = Promise.resolve();

  constructor(store: Store, secrets: Secrets, now: () => number) {
    this.#store = store;
    this.#secrets = secrets;
    this.#now = now;
    this.#byName = new TryLimit(FREE.name, now);
    this.#byAddress = new TryLimit(FREE.address, now);
  }

  /** Whether there are accounts. Once there are, there always will be. */
  async exist(): Promise<boolean> {
    if (!this.#exist) this.#exist = (await this.#store.people.list()).length > 0;
    return this.#exist;
  }

  /**
   * Everyone who has or had an account. What this server changes is seen at once, what another one on the same store changes
   * within a second: stations ask at every post.
   */
  everyone(): Promise<readonly Person[]> {
    if (this.#known === null || this.#now() >= this.#known.until) {
      const people = this.#store.people.list();
      this.#known = { people, until: this.#now() + KNOWN_MS };
      // Nobody is known from a question that failed.
      people.catch(() => {
        this.#known = null;
      });
    }
    return this.#known.people;
  }

  /** Makes the owner, when there is nobody yet. */
  setUp(name: string, password: string): Promise<Person> {
    return this.#inTurn(async () => {
      if (await this.exist()) throw new Refused("taken", "There are accounts already. Sign in.");
      const passwordHash = await this.#secrets.hash(password);
      const owner = { name, role: "owner", passwordHash, codeHash: null } as const;
      const person = done(await this.#store.people.addFirst(owner), "person");
      this.#exist = true;
      return person;
    });
  }

  /**
   * Who has this name and this secret, and where they may act from. An unknown name, a wrong secret and an account
   * that was put away are told apart by nothing, not even time.
   */
  async signIn(
    name: string,
    secret: string,
    address: string,
  ): Promise<{ readonly person: Person; readonly kind: "office" | "floor" }> {
    // Whoever sits at the server itself is not locked out by someone on the network.
    const where = isLoopback(address) ? "here" : "network";
    const key = `${where} ${name.normalize("NFKC").trim().toLowerCase()}`;
    const waitMs = Math.max(this.#byName.waitMs(key), this.#byAddress.waitMs(address));
    if (waitMs > 0) {
      const seconds = Math.ceil(waitMs / 1000);
      throw new Refused(
        "too-many-tries",
        `Too many wrong tries. Wait ${seconds} s and try again.`,
        {},
        {
          "retry-after": String(seconds),
        },
      );
    }
    this.#byName.count(key);
    this.#byAddress.count(address);
    const known = await this.#store.people.byName(name);
    // No password is that short, so that what was typed tells which of the two it is.
    const kind = FLOOR_CODE.test(secret) ? "floor" : "office";
    const hash = known?.active === true ? (kind === "floor" ? known.codeHash : known.passwordHash) : null;
    if (!(await this.#secrets.verify(hash, secret)) || known === null)
      throw new Refused("wrong-secret", "The name and the password or code do not go together.");
    this.#byName.forgive(key, true);
    this.#byAddress.forgive(address, false);
    return { person: personOf(known), kind };
  }

  add({ name, role, password, code }: NewPerson): Promise<Person> {
    return this.#inTurn(async () => {
      if (code !== undefined && !mayHaveCode(role)) refuseCode();
      if (code === undefined && password === undefined)
        throw new Refused("bad-request", "Without a password or a floor code nobody can sign in.", {
          places: [{ at: "password", expected: "a password, or a floor code" }],
        });
      return done(
        await this.#store.people.add({
          name,
          role,
          passwordHash: password === undefined ? null : await this.#secrets.hash(password),
          codeHash: code === undefined ? null : await this.#secrets.hash(code),
        }),
        "person",
      );
    });
  }

  /** Changes an account. `mayLess`: whether its sessions must end, because a right or a secret of it changed. */
  change(id: string, patch: PersonPatch): Promise<{ readonly person: Person; readonly mayLess: boolean }> {
    return this.#inTurn(async () => {
      const before = await this.#store.people.byId(id);
      if (before === null) throw new Refused("not-found", "There is no such person.");
      const role = patch.role ?? before.role;
      const active = patch.active ?? before.active;
      const keepsCode = patch.code === undefined ? before.hasCode : patch.code !== null;
      if (keepsCode && !mayHaveCode(role)) refuseCode();
      if (before.role === "owner" && before.active && !(role === "owner" && active))
        await this.#checkOwners(id);
      const change: { -readonly [K in keyof NewPersonRow]?: NewPersonRow[K] } & { active?: boolean } = {};
      if (patch.name !== undefined) change.name = patch.name;
      if (patch.role !== undefined) change.role = patch.role;
      if (patch.active !== undefined) change.active = patch.active;
      if (patch.password !== undefined) change.passwordHash = await this.#secrets.hash(patch.password);
      if (patch.code !== undefined)
        change.codeHash = patch.code === null ? null : await this.#secrets.hash(patch.code);
      const person = done(await this.#store.people.change(id, change), "person");
      const mayLess =
        role !== before.role || !active || patch.password !== undefined || patch.code !== undefined;
      if (mayLess) await this.#store.people.endSessionsOf(id);
      return { person, mayLess };
    });
  }

  async #checkOwners(id: string): Promise<void> {
    const people = await this.#store.people.list();
    if (people.some((p) => p.id !== id && p.role === "owner" && p.active && p.hasPassword)) return;
    throw new Refused("not-allowed", "This is the last owner. Make someone else an owner first.");
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#turn.then(work, work).finally(() => {
      this.#known = null;
    });
    this.#turn = mine.catch(() => undefined);
    return mine;
  }
}
