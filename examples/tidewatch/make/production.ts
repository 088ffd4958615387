import type { Book, BookRow, Shop } from "@pinwright/book";
import { resolveMachine } from "@pinwright/engine";
import { rows, type Topic } from "./author.ts";
import { answerSteps } from "./board-answers.ts";
import { bonds } from "./production-bonds.ts";
import { boardFixings, STANDOFFS } from "./production-fixings.ts";
import { electronics, placements } from "./production-placements.ts";
import { stepRules } from "./production-rules.ts";
import { STATIONS, stationChoices, steps } from "./production-steps.ts";
import { tests } from "./production-tests.ts";
import { HOLDERS } from "./shop.ts";

type Part = Partial<BookRow<"parts">> & Pick<BookRow<"parts">, "id" | "label" | "label_zh" | "kind">;

const OPTIONS: readonly Partial<BookRow<"options">>[] = [
  { id: "mains-230", label: "Mains 230 V", label_zh: "市电 230 V", kind: "mains", usual: "yes" },
  { id: "mains-115", label: "Mains 115 V", label_zh: "市电 115 V", kind: "mains" },
  {
    id: "language-en",
    label: "English labels and book",
    label_zh: "英文标签与手册",
    kind: "language",
    usual: "yes",
  },
  { id: "language-zh", label: "Chinese labels and book", label_zh: "中文标签与手册", kind: "language" },
];

/** Parts that wiring and boards name, and the sheet goods of the panels. */
const LOOSE: readonly Part[] = [
  { id: "hw.ring-m4", label: "Ring terminal M4", label_zh: "M4 圆环端子", kind: "contact" },
  { id: "hw.washer-toothed-m4", label: "Toothed washer M4", label_zh: "M4 齿形垫圈", kind: "hardware" },
  { id: "hw.ball", label: "Ball, 27 mm, steel", label_zh: "27 mm 钢球", kind: "turned", mass_g: 80.9 },
  ...[18, 13, 12, 9].map(
    (mm): Part => ({
      id: `sheet.ply-${mm}`,
      label: `Birch plywood ${mm} mm`,
      label_zh: `桦木胶合板 ${mm} mm`,
      kind: "sheet",
      unit: "m2",
      thickness_mm: mm,
    }),
  ),
];

/** A ceramic tube breaks more current than a glass one of the same rating; never the other way round. */
const ALTERNATES: readonly Partial<BookRow<"alternates">>[] = ["t-6-3", "t-3-15", "t-2"].map((rating) => ({
  part: `fuse.${rating}`,
  instead: `fuse.${rating}-h`,
  remark: "Ceramic for glass, same rating; never glass for ceramic",
  remark_zh: "以陶瓷管代玻璃管，额定值相同；不可反过来",
}));

/** What the floor and the buyer need, made from the machine as the other topics have placed and wired it. */
export function production(book: Book, shop: Shop): Topic {
  const t = book.tables;
  const known = new Set(t.parts.map((part) => part.id));
  const parts = rows("parts", [
    ...LOOSE,
    ...electronics(t.board_types, t.elements).map(
      ({ part, label, labelZh, value = "" }): Part => ({
        id: part,
        label,
        label_zh: labelZh,
        kind: "electronic",
        value,
      }),
    ),
    ...HOLDERS.map(
      ({ part, label, label_zh, kind }): Part => ({
        id: part,
        label,
        label_zh,
        kind: "hardware",
        unit: kind === "sleeve" ? "m" : "each",
      }),
    ),
    ...[...t.fastener_types, ...STANDOFFS].flatMap(({ part, label, label_zh }): Part[] =>
      part === undefined || part === null
        ? []
        : [{ id: part, label: label ?? part, label_zh: label_zh ?? "", kind: "screw" }],
    ),
  ]).filter((part, i, all) => !known.has(part.id) && all.findIndex((other) => other.id === part.id) === i);
  return {
    tables: {
      options: rows("options", OPTIONS),
      alternates: rows("alternates", ALTERNATES),
      bonds,
      fastener_types: rows("fastener_types", STANDOFFS),
      fasteners: [...boardFixings(resolveMachine(book, shop))],
      placements: [...placements(t.board_types, t.connectors, t.elements)],
      stations: rows("stations", STATIONS),
      steps: [...steps(book)],
      step_rules: [...stepRules(book)],
      choices: [...stationChoices()],
      tests: [...tests(t.board_types, t.elements, bonds, t.supplies)],
      test_steps: [...answerSteps(t.board_types, t.elements)],
      parts,
    },
  };
}
