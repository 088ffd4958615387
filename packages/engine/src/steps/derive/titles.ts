import { compareText } from "@pinwright/kernel";
import type { Languages, Machine } from "../../model/index.ts";
import type { Draft } from "./draft.ts";
import { groupLabels } from "./labels.ts";

/** A step of so few things is named by them. */
const MOST_NAMED = 4;

/**
 * The steps with names that tell alike ones apart: a group that is divided names its things when they are few, else
 * where on the panel they are; what then still has one name is numbered. Names of other steps stay.
 */
export function withTitles(machine: Machine, drafts: readonly Draft[]): readonly Draft[] {
  const families = new Map<string, Draft[]>();
  for (const draft of drafts) {
    const family = familyOf(draft);
    if (family === null) continue;
    const known = families.get(family.key);
    if (known === undefined) families.set(family.key, [draft]);
    else known.push(draft);
  }
  const titles = new Map<string, Languages>();
  for (const family of families.values())
    for (const [id, labels] of numbered(family.map((draft) => [draft.id, titleOf(machine, draft, family)])))
      titles.set(id, labels);
  return drafts.map((draft) => {
    const labels = titles.get(draft.id);
    return labels === undefined ? draft : { ...draft, labels };
  });
}

interface Family {
  readonly key: string;
  readonly kind: "devices" | "boards" | "fixings" | "join";
  readonly name: string;
}

/** What a derived group is a part of, from its id `kind:panel:side:family…`; null for any other step. */
function familyOf({ id, kind, panelId, side }: Draft): Family | null {
  if (panelId === null) return null;
  if (kind === "devices" || kind === "fixings") {
    const name = id.replace(/~\d+$/, "").split(":")[3] ?? "";
    return { key: `${kind}:${panelId}:${side}:${name}`, kind, name };
  }
  return kind === "boards" || kind === "join" ? { key: `${kind}:${panelId}:${side}`, kind, name: "" } : null;
}

function titleOf(machine: Machine, draft: Draft, family: readonly Draft[]): Languages {
  const own = familyOf(draft);
  if (own === null || draft.panelId === null) return draft.labels;
  const { kind, name } = own;
  const whole = groupLabels(machine, kind, name, draft.panelId, draft.side);
  const isNamed =
    draft.itemIds.length > 0 &&
    draft.itemIds.length <= MOST_NAMED &&
    (family.length > 1 || kind === "boards" || name === "other");
  if (isNamed) return namedBy(machine, groupLabels(machine, kind, name, null, draft.side), draft.itemIds);
  if (family.length === 1) return whole;
  const where = placeWords(machine, draft);
  return { en: `${whole.en}, ${where.en}`, zh: `${whole.zh}，${where.zh}` };
}

function namedBy(machine: Machine, title: Languages, ids: readonly string[]): Languages {
  const names = ids.flatMap((id) => machine.items.get(id)?.labels ?? []);
  return {
    en: `${title.en}: ${names.map(({ en }) => en).join("; ")}`,
    zh: `${title.zh}：${names.map(({ zh }) => zh).join("、")}`,
  };
}

/** Names that are given more than once get a number, in code-point order of the ids. */
function numbered(
  titles: readonly (readonly [id: string, labels: Languages])[],
): readonly (readonly [string, Languages])[] {
  const alike = new Map<string, string[]>();
  for (const [id, { en }] of titles.toSorted(([a], [b]) => compareText(a, b))) {
    const known = alike.get(en);
    if (known === undefined) alike.set(en, [id]);
    else known.push(id);
  }
  return titles.map(([id, labels]) => {
    const own = alike.get(labels.en) ?? [];
    if (own.length < 2) return [id, labels];
    const n = own.indexOf(id) + 1;
    return [id, { en: `${labels.en} (${n} of ${own.length})`, zh: `${labels.zh}（${n}/${own.length}）` }];
  });
}

/** Thirds of a panel, from the edge at which its frame begins. A playfield's is the one near the player. */
const ALONG: Readonly<Record<"playfield" | "other", readonly Languages[]>> = {
  playfield: [
    { en: "front", zh: "前部" },
    { en: "middle", zh: "中部" },
    { en: "rear", zh: "后部" },
  ],
  other: [
    { en: "lower part", zh: "下部" },
    { en: "middle", zh: "中部" },
    { en: "upper part", zh: "上部" },
  ],
};
const ACROSS: readonly Languages[] = [
  { en: "player's left", zh: "玩家左侧" },
  { en: "centre", zh: "居中" },
  { en: "player's right", zh: "玩家右侧" },
];

/** Which third of its panel the things of a step lie in, along and across it. */
function placeWords(machine: Machine, { panelId, itemIds, fastenerIds }: Draft): Languages {
  const panel = panelId === null ? undefined : machine.panels.get(panelId);
  const places = (itemIds.length > 0 ? itemIds : fastenerIds).flatMap(
    (id) => machine.items.get(id)?.place ?? [],
  );
  const mean = (of: (place: (typeof places)[number]) => number): number =>
    places.reduce((sum, place) => sum + of(place), 0) / Math.max(1, places.length);
  const along = third(mean(({ yMm }) => yMm) / (panel?.height_mm ?? 1));
  const across = third(mean(({ xMm }) => xMm) / (panel?.width_mm ?? 1));
  const a = ALONG[panel?.purpose === "playfield" ? "playfield" : "other"][along];
  const b = ACROSS[across];
  return { en: `${a?.en ?? ""}, ${b?.en ?? ""}`, zh: `${a?.zh ?? ""}${b?.zh ?? ""}` };
}

const third = (share: number): number => Math.min(2, Math.max(0, Math.floor(share * 3)));
