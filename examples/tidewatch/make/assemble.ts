import {
  type Book,
  type BookTables,
  emptyBook,
  emptyShop,
  machineSchema,
  type Outline,
  type Shop,
  type ShopTables,
} from "@pinwright/book";
import type { Topic } from "./author.ts";
import { boxed } from "./box.ts";
import { inlineTails } from "./inline-tails.ts";
import { lanes } from "./lanes.ts";
import { withOutside } from "./outside/index.ts";
import { withParts } from "./parts/index.ts";
import { production } from "./production.ts";
import { withServiceNumbers } from "./service-numbers.ts";
import { shop } from "./shop.ts";
import { instrumentShop } from "./shop-instruments.ts";
import { panelShop } from "./shop-panels.ts";
import { runShop } from "./shop-runs.ts";
import { TOPICS } from "./topics.ts";

const MACHINE = machineSchema.parse({
  format: 1,
  id: "tidewatch",
  label: "Tidewatch",
  label_zh: "守潮人",
  revision: "A",
  date: "2026-11-25",
  owner: "Pinwright examples",
  approved: "",
  languages: ["en", "zh"],
  slope_deg: 6.5,
  ball_mm: 27,
});

/** The tables that every part gives, one after the other; `blank` has every name of the schema. */
function merge<T extends object>(blank: T, parts: readonly Partial<T>[]): T {
  const merged: Record<string, unknown[]> = {};
  for (const name of Object.keys(blank)) merged[name] = [];
  for (const part of parts) {
    for (const [name, added] of Object.entries(part)) {
      if (Array.isArray(added)) merged[name]?.push(...added);
    }
  }
  // Every name of `blank` has its list and only rows of that table went into it.
  return merged as T;
}

/**
 * The book of Tidewatch and its shop, rows in the order of the topics; lanes are drawn over what they
 * placed, what the floor and the buyer need is made from it, the panels get the wood of their joints, everything
 * its part and price, and at last what is made outside its drawings and samples. */
export function assemble(): { readonly book: Book; readonly shop: Shop } {
  const placed = assembleTopics([...TOPICS, { tables: {}, shop }]);
  const drawn = [
    lanes(placed.book, placed.shop),
    inlineTails(placed.book, placed.shop),
    production(placed.book, placed.shop),
  ];
  const joinery: Topic = { tables: {}, shop: panelShop };
  const planned: Topic = { tables: {}, shop: runShop };
  const measured: Topic = { tables: {}, shop: instrumentShop };
  const whole = assembleTopics([...TOPICS, { tables: {}, shop }, joinery, planned, measured, ...drawn]);
  const priced = withParts(boxed(whole.book), whole.shop);
  return withOutside(priced.book, priced.shop);
}

function assembleTopics(topics: readonly Topic[]): { readonly book: Book; readonly shop: Shop } {
  const outlines = new Map<string, Outline>();
  for (const topic of topics) {
    for (const [file, outline] of topic.outlines ?? []) {
      if (outlines.has(file)) throw new Error(`Two topics draw the outline ${file}.`);
      outlines.set(file, outline);
    }
  }
  const tables: BookTables = merge(
    emptyBook().tables,
    topics.map((topic) => topic.tables),
  );
  const shopTables: ShopTables = merge(
    emptyShop().tables,
    topics.map((topic) => topic.shop ?? {}),
  );
  const numbered = withServiceNumbers(tables);
  return {
    book: { machine: MACHINE, tables: numbered, outlines },
    shop: { ...emptyShop(), tables: shopTables },
  };
}
