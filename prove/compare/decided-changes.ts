import type { LineResult } from "../../packages/engine/src/index.ts";
import { findingWords } from "../../packages/words/src/index.ts";
import { labelOf } from "./names.ts";
import { add, drop, put, type Script, spread, victims } from "./script.ts";
import { AMOUNTS, harness as inHarness, kinds, NO_SHEET, named, reaches } from "./sheet-rules.ts";

const WHY = "It was looked at on the first machine.";

const titleOf = (rule: string): string => findingWords("en", rule).title;

const ACCEPTED = { kind: "accept", value: "", held: "pinned", by: "designer", basis: "" } as const;

/** What persons decide: options, acceptances, pinned results, and what the machine is called. */
export const DECIDED_CHANGES: readonly Script[] = [
  (book) => [
    {
      name: "the machine is called otherwise",
      after: { ...book, machine: { ...book.machine, label: "Ebbwatch", label_zh: "守汐人" } },
      says: [`Machine, Ebbwatch: is now called “Ebbwatch” (was “${book.machine.label}”)`],
      follows: [],
      sheets: reaches(() => true),
    },
    {
      name: "a new option",
      after: add(book, "options", {
        ...{ id: "cellar", label: "Cellar edition", label_zh: "地窖版", kind: "edition", usual: "no" },
      }),
      says: ["Option, Cellar edition: is new"],
      follows: [],
      sheets: NO_SHEET,
    },
  ],
  (book, before) =>
    spread(openOf(before, "pinboard-tail-short")).map(({ rule, subjects }) => ({
      name: `accept a finding: ${rule} ${subjects.join(" ")}`,
      after: add(book, "choices", {
        ...ACCEPTED,
        ...{ subject: [rule, ...subjects].join("|"), reason: WHY },
      }),
      says: [],
      follows: [
        `Finding: accepted by designer: ${titleOf(rule)} (${labelOf(book.tables.devices, subjects[0] ?? "")}, tail to ${labelOf(book.tables.devices, subjects[0] ?? "")}, ${labelOf(book.tables.harnesses, subjects[2] ?? "")}), because ${WHY}`,
      ],
      sheets: NO_SHEET,
    })),
  (book) =>
    victims(
      book,
      "choices",
      ({ kind: of, subject }) => of === "accept" && subject.startsWith("order-loop|"),
    ).map((row) => ({
      name: `take an acceptance back: ${row.subject}`,
      after: drop(book, "choices", (one) => one === row),
      says: [],
      follows: [`Finding: no longer accepted: ${acceptedOf(row.subject, book.tables)}`],
      sheets: NO_SHEET,
    })),
  (book) =>
    victims(
      book,
      "choices",
      ({ kind: of, subject }) => of === "accept" && subject.startsWith("order-loop|"),
    ).map((row) => ({
      name: `accept for another reason: ${row.subject}`,
      after: put(book, "choices", row, { reason: WHY }),
      says: [],
      follows: [
        `Finding: accepted by designer for another reason: ${acceptedOf(row.subject, book.tables)}, because ${WHY} (was: ${row.reason})`,
      ],
      sheets: NO_SHEET,
    })),
  (book) => [
    {
      name: "accept a finding that is not there",
      after: add(book, "choices", {
        ...ACCEPTED,
        ...{ subject: "order-loop|hs.mains|bd.lamp-3|hs.dc|bd.lamp-4", reason: WHY },
      }),
      says: [
        `Decision: accepts a finding that is not there: ${acceptedOf("order-loop|hs.mains|bd.lamp-3|hs.dc|bd.lamp-4", book.tables)}, by designer, because ${WHY}`,
      ],
      follows: [],
      sheets: NO_SHEET,
    },
  ],
  (book, before) => {
    const wires = [...before.harnesses.values()]
      .filter(({ harness }) => harness.id === "hs.switch-front" || harness.id === "hs.lamp-rear")
      .map(({ harness, wires: own }) => ({ harness, wire: own[0] }));
    return wires.map(({ harness, wire }) => {
      const row = book.tables.choices.find(
        ({ kind: of, subject }) => of === "colour" && subject === wire?.id,
      );
      if (wire === undefined || row === undefined) throw new Error("no colour was settled");
      const name = `wire ${harness.number}-${wire.number}`;
      const to = row.value === "VT" ? "OG" : "VT";
      const was = (row.value.match(/[A-Z]{2}/gu) ?? []).map((code) => COLOURS[code] ?? code).join("-");
      return {
        name: `a colour is pinned: ${wire.id}`,
        after: put(book, "choices", row, {
          ...{ value: to, held: "pinned", by: "designer", reason: WHY },
        }),
        says: [`Decision: colour of ${name} is decided: ${COLOURS[to]} (was ${was})`],
        follows: [],
        sheets: reaches(
          inHarness([harness.id], "from-to", "cut-list"),
          named("wiring-chart"),
          AMOUNTS,
          inHarness([harness.id]),
        ),
      };
    });
  },
  (book) =>
    victims(
      book,
      "choices",
      ({ kind: of, held, subject }) =>
        of === "station" && held === "pinned" && subject.startsWith("harness:"),
    ).map((row) => {
      const harness = labelOf(book.tables.harnesses, row.subject.replace("harness:", ""));
      return {
        name: `another station is pinned: ${row.subject}`,
        after: put(book, "choices", row, { value: "stn.final" }),
        says: [
          `Decision: station of ${harness} is decided: ${labelOf(book.tables.stations, "stn.final")} (was ${labelOf(book.tables.stations, row.value)})`,
        ],
        follows: [],
        sheets: reaches(named("step-cards"), kinds("kit-list", "screw-map", "screw-tray")),
      };
    }),
];

const COLOURS: Readonly<Record<string, string>> = {
  ...{ BK: "black", BN: "brown", RD: "red", OG: "orange", YE: "yellow", GN: "green", BU: "blue" },
  ...{ VT: "violet", GY: "grey", WH: "white" },
};

const openOf = (before: LineResult, rule: string): LineResult["findings"] =>
  before.findings.filter((finding) => finding.rule === rule && finding.accepted === null);

/** Title and names of a finding that is accepted, from the subject of the choice. */
function acceptedOf(
  subject: string,
  { boards, harnesses }: { readonly boards: readonly Named[]; readonly harnesses: readonly Named[] },
): string {
  const [rule = "", ...ids] = subject.split("|");
  const names = ids.map((id) => labelOf(id.startsWith("bd.") ? boards : harnesses, id));
  return `${titleOf(rule)} (${names.join(", ")})`;
}

interface Named {
  readonly id: string;
  readonly label: string;
}
