import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import { headBoards } from "./electrics-head-boards.ts";
import { mechanismBoards } from "./electrics-mechanism-boards.ts";
import { nodeBoards } from "./electrics-node-boards.ts";
import { powerBoards } from "./electrics-power-boards.ts";
import { supplies } from "./electrics-supplies.ts";
import { families } from "./families.ts";
import { wireTypes } from "./wire-types.ts";
import { cables, wiring } from "./wiring.ts";

type Part = Partial<BookRow<"parts">> & Pick<BookRow<"parts">, "id" | "label" | "label_zh" | "kind">;

const boardTopics = [nodeBoards, mechanismBoards, powerBoards, headBoards];
const connectors = [...boardTopics, wiring].flatMap((topic) => topic.tables.connectors ?? []);
const familyOf = (id: string) => families.tables.connector_families?.find((f) => f.id === id);

const once = (parts: readonly Part[]): Part[] => [...new Map(parts.map((part) => [part.id, part])).values()];

const wires = (wireTypes.tables.wire_types ?? []).flatMap((type): Part[] =>
  type.part === null
    ? []
    : [
        {
          id: type.part,
          label: type.label,
          label_zh: type.label_zh,
          kind: "wire",
          unit: "m",
          value: `${type.area_mm2} mm²`,
        },
      ],
);

const contacts = (families.tables.connector_families ?? []).flatMap((family) =>
  [
    { id: family.contact_part, what: "contact", zh: "端子" },
    { id: family.mate_contact_part, what: "mating contact", zh: "对插端子" },
  ].flatMap(({ id, what, zh }): Part[] =>
    id === null
      ? []
      : [{ id, label: `${family.label}, ${what}`, label_zh: `${family.label_zh} ${zh}`, kind: "contact" }],
  ),
);

const housings = connectors.flatMap((c): Part[] => {
  const family = familyOf(c.family);
  const label = (what: string) => `${family?.label ?? c.family}, ${c.ways} ways, ${what}`;
  const labelZh = (what: string) => `${family?.label_zh ?? c.family} ${c.ways} 位 ${what}`;
  const inline = c.board_type === null;
  return [
    ...(c.housing_part === null
      ? []
      : [
          {
            id: c.housing_part,
            label: label("housing"),
            label_zh: labelZh("胶壳"),
            kind: "connector" as const,
          },
        ]),
    ...(c.mate_part === null
      ? []
      : [
          {
            id: c.mate_part,
            label: label(inline ? "mating housing" : "header"),
            label_zh: labelZh(inline ? "对插胶壳" : "针座"),
            kind: "connector" as const,
          },
        ]),
    ...(c.key_part === null
      ? []
      : [
          {
            id: c.key_part,
            label: `${family?.label ?? c.family}, key plug`,
            label_zh: `${family?.label_zh ?? c.family} 防误插塞`,
            kind: "connector" as const,
          },
        ]),
  ];
});

const bareBoards = boardTopics
  .flatMap((topic) => topic.tables.board_types ?? [])
  .flatMap((type): Part[] =>
    type.part === null
      ? []
      : [
          {
            id: type.part,
            label: `${type.label}, bare`,
            label_zh: `${type.label_zh} 裸板`,
            kind: "board",
            source: "have-made",
            value: `${type.width_mm} × ${type.depth_mm} mm`,
          },
        ],
  );

const fuseParts = (supplies.tables.fuses ?? []).flatMap((fuse): Part[] =>
  fuse.part === null
    ? []
    : [
        {
          id: fuse.part,
          label: `Fuse T ${fuse.rated_a} A, ${fuse.size}`,
          label_zh: `熔断器 T ${fuse.rated_a} A`,
          kind: "electronic",
          value: `T ${fuse.rated_a} A 250 V`,
          wear: true,
        },
      ],
);

const CABLE_LABELS: Readonly<Record<string, readonly [string, string]>> = {
  "cable.ribbon-10": ["Ribbon cable, 10 cores", "十芯排线"],
  "cable.screened-5": ["Screened cable, five cores", "五芯屏蔽电缆"],
  "cable.cord-2x1": ["Mains cord, 2 × 1.0 mm²", "两芯电源软线 2 × 1.0 mm²"],
};
const cableParts = (cables.tables.cables ?? []).flatMap((cable): Part[] => {
  const [label, label_zh] = CABLE_LABELS[cable.part ?? ""] ?? [];
  return cable.part === null || label === undefined || label_zh === undefined
    ? []
    : [{ id: cable.part, label, label_zh, kind: "cable", unit: "m" }];
});

/** Parts that the electrics name: wire, cable, contacts, housings, keys, bare boards, fuses. */
export const electricsParts: Topic = {
  tables: {
    parts: rows(
      "parts",
      once([...wires, ...cableParts, ...contacts, ...housings, ...bareBoards, ...fuseParts]),
    ),
  },
};
