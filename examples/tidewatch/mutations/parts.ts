import type { BookRow } from "@pinwright/book";
import { PriceBook } from "@pinwright/engine";
import { numberOfDecimal } from "@pinwright/kernel";
import { ids, isFreeOf, most, some } from "./about.ts";
import type { Consequence, Mutation, Sound } from "./mutation.ts";

type Part = BookRow<"parts">;

/** How much of a part is in one machine. */
const used = ({ parts: { bill } }: Sound, id: string): number => numberOfDecimal(bill.totals.get(id) ?? 0n);

/** Parts in the machine that nothing is in, that the shop has no way of its own for, and of which no rule tells. */
function plainParts(sound: Sound, is: (part: Part) => boolean): readonly Part[] {
  const { book, shop } = sound.machine;
  const containing = new Set(sound.parts.bill.lines.map(({ parentId }) => parentId));
  const byWays = new Set(shop.tables.ways.map(({ part }) => part));
  const isQuiet = (id: string) => !sound.findings.some(({ subjects }) => subjects.includes(id));
  return book.tables.parts.filter(
    (part) =>
      used(sound, part.id) > 0 &&
      !containing.has(part.id) &&
      !byWays.has(part.id) &&
      isQuiet(part.id) &&
      is(part),
  );
}

/** Suppliers that have prices of a part. */
const sellers = ({ machine }: Sound, partId: string): ReadonlySet<string> =>
  new Set(machine.shop.tables.prices.flatMap((row) => (row.part === partId ? [row.supplier] : [])));

const mostUsed = (sound: Sound, is: (part: Part) => boolean): string =>
  most(plainParts(sound, is), ({ id }) => used(sound, id)).id;

const isBought = ({ source }: Part): boolean => source === "buy";
const nothing = (): void => {};

/** With one supplier fewer, or none, a part is told of by how many there are. */
const depends = (id: string): readonly Consequence[] => [
  some("single-source", ids(id)),
  some("long-lead", ids(id)),
];

/** Mistakes in what the machine is made of, and in what the shop knows of its prices. */
export const parts: readonly Mutation[] = [
  {
    name: "the kind of device that the machine has most of by itself has no part",
    rule: "part-unnamed",
    plan: (sound) => {
      const { items, book } = sound.machine;
      const own = new Map<string, number>();
      for (const item of items.values())
        if (item.kind === "device" && item.parentId === null)
          own.set(item.type.id, (own.get(item.type.id) ?? 0) + 1);
      const type = most(own, ([, count]) => count)[0];
      const part = book.tables.device_types.find(({ id }) => id === type)?.part ?? "";
      return {
        victim: [type],
        change: (edit) => edit.set("device_types", { id: type }, { part: "" }),
        ends: depends(part),
      };
    },
  },
  {
    name: "the bought part that the machine has most of has no price any more",
    rule: "part-no-price",
    plan: (sound) => {
      const id = mostUsed(sound, (part) => isBought(part) && part.unit === "each");
      return {
        victim: [id],
        change: nothing,
        changeShop: (edit) => edit.remove("prices", { part: id }),
        ends: depends(id),
      };
    },
  },
  {
    name: "the bought part of boards that the machine has most of is said to be made, and nobody says how",
    rule: "part-no-source",
    plan: (sound) => {
      const id = mostUsed(sound, (part) => isBought(part) && part.kind === "electronic");
      return {
        victim: [id],
        change: (edit) => edit.set("parts", { id }, { source: "make" }),
        follows: [some("made-unsaid", ids(id)), some("drawing-none", ids(id))],
      };
    },
  },
  {
    // A circle within the rows of `bom` is a fault of the book; one through what is built in is not.
    name: "the device that most is built into mechanisms contains such a mechanism",
    rule: "bill-circle",
    plan: (sound) => {
      const { mechanism_devices, mechanism_types, device_types } = sound.machine.book.tables;
      const rows = mechanism_devices.flatMap(({ mechanism_type, device_type }) => {
        const part = device_types.find(({ id }) => id === device_type)?.part ?? null;
        const whole = mechanism_types.find(({ id }) => id === mechanism_type)?.part ?? null;
        return part === null || whole === null ? [] : [{ part, whole, mechanism_type }];
      });
      const { part, whole, mechanism_type } = most(rows, (row) => used(sound, row.part));
      return {
        victim: [mechanism_type, part],
        change: (edit) => edit.add("bom", { parent: part, part: whole, quantity: 1 }),
        ends: depends(part),
      };
    },
  },
  {
    name: "the wire that the machine has most of is counted in pieces",
    rule: "part-unit",
    plan: (sound) => {
      const wires = new Set([...sound.machine.wireTypes.values()].map(({ part }) => part));
      const id = mostUsed(sound, (part) => wires.has(part.id));
      return { victim: [id], change: (edit) => edit.set("parts", { id }, { unit: "each" }) };
    },
  },
  {
    name: "nobody knows what the dearest tool costs",
    rule: "tool-no-cost",
    plan: (sound) => {
      const tools = sound.machine.book.tables.tooling.filter(({ part }) => used(sound, part) > 0);
      const tool = most(tools, ({ cost }) => cost ?? 0);
      return {
        victim: [tool.id, tool.part],
        change: (edit) => edit.set("tooling", { id: tool.id }, { cost: "" }),
      };
    },
  },
  {
    name: "the part in pieces that the machine has most of comes in packs of half a piece",
    rule: "pack-bad",
    plan: (sound) => {
      const id = mostUsed(sound, (part) => isBought(part) && part.unit === "each");
      const [supplier = ""] = sellers(sound, id);
      return {
        victim: [id, supplier],
        change: nothing,
        changeShop: (edit) => edit.set("prices", { part: id, supplier }, { pack: 0.5 }),
      };
    },
  },
  {
    name: "the supplier of most parts is paid in a currency without a rate",
    rule: "price-currency",
    plan: (sound) => {
      const counts = new Map<string, number>();
      for (const { supplier } of sound.machine.shop.tables.prices)
        counts.set(supplier, (counts.get(supplier) ?? 0) + 1);
      const supplier = most(counts, ([, count]) => count)[0];
      return {
        victim: [supplier],
        change: nothing,
        changeShop: (edit) => edit.set("suppliers", { id: supplier }, { currency: "CHF" }),
      };
    },
  },
  {
    name: "the last price of the part with most breaks is above all others",
    rule: "price-order",
    plan: (sound) => {
      const { prices } = sound.machine.shop.tables;
      const isFree = isFreeOf(sound, "price-order");
      const book = new PriceBook(sound.machine);
      const offers = plainParts(sound, ({ id }) => isFree(id)).flatMap(({ id }) => book.offersOf(id));
      const { partId, supplierId } = most(offers, ({ breaks }) => breaks.length);
      const own = prices.filter((row) => row.part === partId && row.supplier === supplierId);
      const last = most(own, (row) => row.from_quantity);
      const dear = 10 * most(own, (row) => row.price).price;
      return {
        victim: [partId, supplierId],
        change: nothing,
        changeShop: (edit) =>
          edit.set(
            "prices",
            { part: partId, supplier: supplierId, from_quantity: last.from_quantity },
            { price: dear },
          ),
      };
    },
  },
  {
    name: "the first supplier of the part with two that the machine has most of sells it no more",
    rule: "single-source",
    plan: (sound) => {
      const id = mostUsed(sound, (part) => isBought(part) && sellers(sound, part.id).size === 2);
      const [gone = ""] = sellers(sound, id);
      return {
        victim: [id],
        change: nothing,
        changeShop: (edit) => edit.remove("prices", { part: id, supplier: gone }),
      };
    },
  },
  {
    name: "the bought part that the machine has most of takes ninety days from everybody",
    rule: "long-lead",
    plan: (sound) => {
      const id = mostUsed(sound, isBought);
      return {
        victim: [id],
        change: nothing,
        changeShop: (edit) => edit.set("prices", { part: id }, { lead_days: 90 }),
      };
    },
  },
];
