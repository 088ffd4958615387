import { readFileSync } from "node:fs";
import { join } from "node:path";
import { RANK } from "@pinwright/book";
import { programRoot } from "../root.ts";
import type { Visitor } from "./test-server.ts";

/** Puts the drivers of the small example's shop into the shop: without them nothing reaches its screws. */
export async function putExampleDrivers(visitor: Visitor): Promise<void> {
  const path = join(programRoot(), "examples/first-light/shop/drivers.csv");
  const [head = [], ...rows] = readFileSync(path, "utf8")
    .trim()
    .split("\n")
    .map((row) => row.split(","));
  const changes = rows.flatMap((cells, n) =>
    [[RANK, `a${n}`] as const, ...cells.map((to, i) => [head[i] ?? "", to] as const)]
      .filter(([, to]) => to !== "")
      .map(([column, to]) => ({ table: "drivers", row: `driver-${n}`, column, from: "", to })),
  );
  await visitor.post("/api/books/shop/changes", { id: "drivers-00000", note: "", changes });
}
