import { createHash } from "node:crypto";
import type { Database } from "../database/database.ts";
import { StoreError } from "../error.ts";
import type { PictureStore } from "../store.ts";

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** Pictures of the floor lie among the contents of files, under their hash and under no name. */
export function pictureStore({ db, write }: Database): PictureStore {
  return {
    put: (bytes) =>
      write(async (held) => {
        const hash = sha256(bytes);
        await held
          .insertInto("file_bodies")
          .values({ hash, size: bytes.length, body: Buffer.from(bytes) })
          .onConflict((conflict) => conflict.column("hash").doNothing())
          .execute();
        return hash;
      }),
    async get(hash) {
      const row = await db
        .selectFrom("file_bodies")
        .select("body")
        .where("hash", "=", hash)
        .executeTakeFirst();
      if (row === undefined) return null;
      if (sha256(row.body) !== hash)
        throw new StoreError(
          "damaged",
          `Picture ${hash} is not what was stored under its hash; restore a back-up.`,
        );
      return row.body;
    },
  };
}
