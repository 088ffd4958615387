import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { bundleWriter, killWriter, type Moment } from "./kill-writer.ts";
import { prepare, Survivors } from "./survivors.ts";

/** When the writer is killed. `prove/store-kill.ts` does it at a hundred moments, on both stores. */
const MOMENTS: readonly Moment[] = [
  { afterSets: 0, thenMs: 1 },
  { afterSets: 3, thenMs: 2 },
  { afterSets: 10, thenMs: 0 },
  { afterSets: 24, thenMs: 5 },
  { afterSets: 55, thenMs: 3 },
];

it("keeps what was acknowledged, and nothing by half, when its process is killed", async () => {
  const folder = await mkdtemp(join(tmpdir(), "pinwright-kill-"));
  const place = { kind: "sqlite", file: join(folder, "store.sqlite") } as const;
  await prepare(place);
  const survivors = new Survivors(place);
  const writer = await bundleWriter();
  let acknowledged = 0;
  for (const [round, moment] of MOMENTS.entries()) {
    const found = await survivors.look(await killWriter(writer, place, round, moment));
    acknowledged += found.acknowledged;
  }
  expect(acknowledged).toBeGreaterThan(91);
  expect((await survivors.lookAtAll()).sets).toBeGreaterThan(acknowledged);
  await rm(folder, { recursive: true, force: true });
});
