import { renameId, withRows } from "../../packages/book/src/index.ts";
import { board, device, fastener, labelOf, sideOf } from "./names.ts";
import { harnessesAt } from "./reach.ts";
import { add, drop, plus, type Script, victims } from "./script.ts";
import {
  AMOUNTS,
  ASSEMBLY,
  ELECTRIC,
  either,
  harness,
  kinds,
  LENGTHS,
  named,
  reaches,
  whereShown,
} from "./sheet-rules.ts";

/** Rows of tables whose cells may name an item. */
const isNamedElsewhere = (id: string, tables: readonly (readonly object[])[]): boolean =>
  tables.some((rows) =>
    rows.some((row) => Object.values(row).some((cell) => String(cell).split(/[ :]/u).includes(id))),
  );

/** What is put into the machine or taken out of it, gets another id, or is joined otherwise. */
export const WHOLE_CHANGES: readonly Script[] = [
  (book) =>
    victims(book, "devices", ({ id }) => id.startsWith("sw."), 3).map((row) => ({
      name: `take out a switch: ${row.id}`,
      after: drop(
        drop(book, "devices", (one) => one === row),
        "ends",
        ({ point }) => point.startsWith(`${row.id}:`),
      ),
      says: [`${device(book, row)}: is gone`],
      follows: [],
      sheets: reaches(
        either(
          named("program-map", "step-cards", "parts-list"),
          harness(harnessesAt(book, row.id), "from-to", "cut-list", "continuity", "wire-labels"),
        ),
        ASSEMBLY,
        AMOUNTS,
        ELECTRIC,
        kinds("wiring-chart"),
        harness(harnessesAt(book, row.id)),
      ),
    })),
  (book) =>
    victims(
      book,
      "devices",
      ({ id }) =>
        id.startsWith("tp.") &&
        !isNamedElsewhere(id, [
          ...[book.tables.ends, book.tables.step_rules, book.tables.steps, book.tables.cutouts],
          book.tables.bonds,
        ]),
    ).map((row) => {
      const held = book.tables.fasteners.filter(({ holds }) => holds?.includes(row.id) === true);
      return {
        name: `take out a part with its screws: ${row.id}`,
        after: drop(
          drop(book, "devices", (one) => one === row),
          "fasteners",
          (one) => held.includes(one),
        ),
        says: [`${device(book, row)}: is gone`, ...held.map((one) => `${fastener(book, one)}: is gone`)],
        follows: [],
        sheets: reaches(
          either(
            named("step-cards", "parts-list"),
            (sheet) => held.length > 0 && named(`drill-table-${held[0]?.panel}-${held[0]?.side}`)(sheet),
          ),
          ASSEMBLY,
          AMOUNTS,
        ),
      };
    }),
  (book) =>
    victims(book, "devices", ({ id }) => id.startsWith("lp."), 3).map((row) => ({
      name: `add a lamp beside: ${row.id}`,
      after: add(book, "devices", {
        ...row,
        ...{ id: `${row.id}-two`, label: `${row.label} two`, x_mm: plus(row.x_mm, 25), number: null },
      }),
      says: [
        `${device(book, { ...row, number: null, label: `${row.label} two` })}: is new: ${labelOf(book.tables.device_types, row.type)}, on the ${sideOf(book, row)}`,
      ],
      follows: [],
      sheets: reaches(
        named("step-cards", "parts-list"),
        ASSEMBLY,
        AMOUNTS,
        kinds("program-map", "wiring-chart"),
      ),
    })),
  (book) =>
    victims(book, "boards", ({ id }) => id === "bd.switch-1" || id === "bd.switch-2").map((of) => {
      const onHarness = book.tables.ends.find(({ point }) => point === `${of.id}:j4.1`)?.harness ?? "";
      const common = book.tables.ends.find(({ point }) => point === `${of.id}:j4.1`)?.net ?? "";
      const near = book.tables.devices.find(({ id }) =>
        book.tables.ends.some(({ point, net }) => net === common && point.startsWith(`${id}:`)),
      );
      const net = book.tables.nets.find(({ id }) => id === "si.buoy-1");
      if (near === undefined || net === undefined) throw new Error("no switch to put another beside");
      const row = {
        ...near,
        ...{ id: "sw.storm-lane", label: "Storm lane", label_zh: "风暴道", number: 199 },
        x_mm: plus(near.x_mm, 24),
      };
      const [com = "com", no = "no"] = ["com", "no"];
      const pin = `${of.id}:j4.10`;
      const withDevice = add(book, "devices", row);
      const withNet = add(withDevice, "nets", {
        ...net,
        ...{ id: "si.storm-lane", label: "Storm lane", label_zh: "风暴道", source: pin },
      });
      const end = (point: string, on: string) => ({ point, net: on, harness: onHarness, options: [] });
      return {
        name: `a new switch with its wires on ${of.id}`,
        after: add(
          withNet,
          "ends",
          end(`${row.id}:${com}`, common),
          end(`${row.id}:${no}`, "si.storm-lane"),
          end(pin, "si.storm-lane"),
        ),
        says: [
          `${device(book, row)}: is new: ${labelOf(book.tables.device_types, row.type)}, on the ${sideOf(book, row)}`,
          "Net, Storm lane: is new",
          `${board(of)}: pin J4-10 is now on net Storm lane (was on no net)`,
        ],
        follows: [],
        sheets: reaches(
          either(
            named("program-map", "step-cards", "parts-list"),
            harness([onHarness], "from-to", "cut-list", "continuity", "wire-labels"),
          ),
          ASSEMBLY,
          AMOUNTS,
          ELECTRIC,
          kinds("wiring-chart"),
          harness([onHarness]),
        ),
      };
    }),
  (book) =>
    victims(book, "devices", ({ id }) => id.startsWith("lp.")).map((row) => {
      const renamed = renameId(book, "devices", row.id, `${row.id}-x`);
      if (!renamed.ok) throw new Error(renamed.reason);
      return {
        name: `another id: ${row.id}`,
        after: renamed.book,
        says: [`${device(book, row)}: was ${row.id} and is now called ${row.id}-x`],
        follows: [],
        sheets: whereShown(
          row.id,
          () => false,
          // What has no other order stands in the order of ids.
          AMOUNTS,
          harness(harnessesAt(book, row.id), ...LENGTHS),
        ),
      };
    }),
  (book) =>
    victims(
      book,
      "ends",
      ({ point, net }) => point.startsWith("bd.lamp-") && isOfOneLamp(book.tables.ends, net),
    ).map((end) => {
      const at = end.point.split(":")[0] ?? "";
      const other = book.tables.ends.find(
        ({ point, net }) =>
          point.startsWith(`${at}:`) && net !== end.net && isOfOneLamp(book.tables.ends, net),
      );
      if (other === undefined) throw new Error("no other pin");
      const lampOn = (net: string) =>
        book.tables.devices.find(({ id }) =>
          book.tables.ends.some((one) => one.net === net && one.point.startsWith(`${id}:`)),
        );
      const says = [end, other].map((one, i, [p = end, q = other]) => {
        const lamp = lampOn(one.net);
        if (lamp === undefined) throw new Error("no lamp");
        const place = (point: string): string =>
          `${(point.split(":")[1] ?? "").replace(".", "-").toUpperCase()} of ${labelOf(book.tables.boards, at)}`;
        return `${device(book, lamp)}: now uses ${place((i === 0 ? q : p).point)} (was ${place(one.point)})`;
      });
      return {
        name: `exchange two pins: ${end.point} and ${other.point}`,
        after: withRows(
          book,
          "ends",
          book.tables.ends.map((one) =>
            one === end ? { ...one, point: other.point } : one === other ? { ...one, point: end.point } : one,
          ),
        ),
        says,
        follows: [],
        sheets: reaches(
          either(named("program-map"), harness([end.harness, other.harness], "from-to", "connector-loading")),
          named("wiring-chart"),
          AMOUNTS,
          ELECTRIC,
          harness([end.harness, other.harness]),
        ),
      };
    }),
];

/** A net between one pin of a board and one lamp, in one harness. */
function isOfOneLamp(
  ends: readonly { readonly point: string; readonly net: string }[],
  net: string,
): boolean {
  const own = ends.filter((one) => one.net === net);
  return (
    own.length === 2 &&
    own.some(({ point }) => /^lp\.[^:]+:/u.test(point)) &&
    own.some(({ point }) => point.startsWith("bd.lamp-"))
  );
}
