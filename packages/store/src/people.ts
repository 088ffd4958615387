import type { Person } from "@pinwright/contract";
import type { Kysely, Selectable } from "kysely";
import type { Database } from "./database/database.ts";
import type { Tables } from "./database/schema.ts";
import type { NewPersonRow, Outcome, PeopleStore, PersonSecrets, SessionRow, StoreOptions } from "./store.ts";

type PersonRow = Selectable<Tables["people"]>;

const person = (row: PersonRow): Person => ({
  id: row.id,
  name: row.name,
  role: row.role,
  active: row.active === 1,
  hasPassword: row.password_hash !== null,
  hasCode: row.code_hash !== null,
});

const sessionOf = (row: Selectable<Tables["sessions"]>): SessionRow => ({
  hash: row.hash,
  personId: row.person,
  token: row.token,
  createdAt: row.created_at,
  expiresAt: row.expires_at,
  kind: row.kind,
  from: row.origin,
});

const secrets = (row: PersonRow | undefined): PersonSecrets | null =>
  row ? { ...person(row), passwordHash: row.password_hash, codeHash: row.code_hash } : null;

/** A name without what people type differently: letter case, full-width letters, space around it. */
const nameKey = (name: string): string => name.normalize("NFKC").trim().toLowerCase().normalize("NFKC");

/** Makes whoever else adds or renames people wait for the end of the transaction, so that a name is free or taken. */
async function lockPeople(db: Kysely<Tables>, kind: Database["kind"]): Promise<void> {
  if (kind === "postgres") await db.selectFrom("store_version").selectAll().forUpdate().execute();
}

/** The people of a store and their sessions. */
export function peopleStore({ kind, db, write }: Database, { now, newId }: StoreOptions): PeopleStore {
  const add = async (held: Kysely<Tables>, made: NewPersonRow): Promise<Outcome<Person>> => {
    await lockPeople(held, kind);
    const row = await held
      .insertInto("people")
      .values({
        id: newId(),
        name: made.name,
        name_key: nameKey(made.name),
        role: made.role,
        active: 1,
        password_hash: made.passwordHash,
        code_hash: made.codeHash,
      })
      .onConflict((conflict) => conflict.column("name_key").doNothing())
      .returningAll()
      .executeTakeFirst();
    return row ? { done: person(row) } : { refused: "taken" };
  };

  return {
    async list() {
      return (await db.selectFrom("people").selectAll().orderBy("name_key").execute()).map(person);
    },
    async byId(id) {
      return secrets(await db.selectFrom("people").selectAll().where("id", "=", id).executeTakeFirst());
    },
    async byName(name) {
      const key = nameKey(name);
      return secrets(
        await db.selectFrom("people").selectAll().where("name_key", "=", key).executeTakeFirst(),
      );
    },
    add: (made) => write((held) => add(held, made)),
    addFirst: (made) =>
      write(async (held) => {
        await lockPeople(held, kind);
        const anyone = await held.selectFrom("people").select("id").limit(1).executeTakeFirst();
        return anyone ? { refused: "taken" } : add(held, made);
      }),
    change: (id, patch) =>
      write(async (held) => {
        if (patch.name !== undefined) {
          await lockPeople(held, kind);
          const other = await held
            .selectFrom("people")
            .select("id")
            .where("name_key", "=", nameKey(patch.name))
            .where("id", "!=", id)
            .executeTakeFirst();
          if (other) return { refused: "taken" };
        }
        const row = await held
          .updateTable("people")
          .set({
            ...(patch.name === undefined ? {} : { name: patch.name, name_key: nameKey(patch.name) }),
            ...(patch.role === undefined ? {} : { role: patch.role }),
            ...(patch.active === undefined ? {} : { active: patch.active ? 1 : 0 }),
            ...(patch.passwordHash === undefined ? {} : { password_hash: patch.passwordHash }),
            ...(patch.codeHash === undefined ? {} : { code_hash: patch.codeHash }),
            id,
          })
          .where("id", "=", id)
          .returningAll()
          .executeTakeFirst();
        return row ? { done: person(row) } : { refused: "not-found" };
      }),
    async session(hash) {
      const row = await db
        .selectFrom("sessions")
        .selectAll()
        .where("hash", "=", hash)
        .where("expires_at", ">", now())
        .executeTakeFirst();
      return row === undefined ? null : sessionOf(row);
    },
    async sessionsOf(personId) {
      const rows = await db
        .selectFrom("sessions")
        .selectAll()
        .where("person", "=", personId)
        .where("expires_at", ">", now())
        .orderBy("created_at", "desc")
        .orderBy("hash")
        .execute();
      return rows.map(sessionOf);
    },
    addSession: (session) =>
      write(async (held) => {
        await held.deleteFrom("sessions").where("expires_at", "<=", now()).execute();
        await held
          .insertInto("sessions")
          .values({
            hash: session.hash,
            person: session.personId,
            token: session.token,
            created_at: session.createdAt,
            expires_at: session.expiresAt,
            kind: session.kind,
            origin: session.from,
          })
          .execute();
      }),
    endSession: (hash) =>
      write(async (held) => {
        await held.deleteFrom("sessions").where("hash", "=", hash).execute();
      }),
    endSessionsOf: (personId) =>
      write(async (held) => {
        await held.deleteFrom("sessions").where("person", "=", personId).execute();
      }),
  };
}
