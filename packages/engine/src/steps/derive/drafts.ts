import { compareText } from "@pinwright/kernel";
import { type FastenerItem, type Finding, type Item, labelsOf, type Machine } from "../../model/index.ts";
import { claimsOf, holdingsOf, movableOf } from "./claims.ts";
import { type Draft, emptyDraft } from "./draft.ts";
import { type Group, groupsOf } from "./groups.ts";
import { benchLabels, groupLabels, mountLabels } from "./labels.ts";
import { ownDrafts } from "./own.ts";
import { sideOf } from "./side.ts";

export interface Drafted {
  /** In code-point order of their ids. */
  readonly drafts: readonly Draft[];
  readonly findings: readonly Finding[];
}

/**
 * Everything that is done to put a machine together, each item and fastener in one step, in no order yet.
 * @param harnesses the steps of the harnesses
 */
export function draftSteps(machine: Machine, harnesses: readonly Draft[]): Drafted {
  const claims = claimsOf(machine);
  const holdings = holdingsOf(machine, (id) => claims.stepOf.has(id));
  const heldOf = (id: string): readonly string[] => holdings.fastenersOf.get(id) ?? [];
  const inSteps = new Map<string, Members>();
  const put = (stepId: string): Members => {
    const known = inSteps.get(stepId);
    if (known !== undefined) return known;
    const members: Members = { itemIds: [], fastenerIds: [] };
    inSteps.set(stepId, members);
    return members;
  };
  for (const [id, stepId] of claims.stepOf)
    if (machine.items.get(id)?.kind === "fastener") put(stepId).fastenerIds.push(id);
  const free = holdings.wholes.filter((item) => {
    const stepId = claims.stepOf.get(item.id);
    if (stepId === undefined) return true;
    const members = put(stepId);
    members.itemIds.push(item.id);
    members.fastenerIds.push(...heldOf(item.id));
    return false;
  });
  const groups = groupsOf(
    machine,
    free,
    holdings.loose,
    (id) => fastenersAmong(machine, heldOf(id)),
    machine.shop.numbers.step_most_fasteners,
  );
  const drafts = [
    ...ownDrafts(machine, inSteps),
    ...benchDrafts(machine),
    ...free.flatMap((item) => (item.kind === "mechanism" ? [mountDraft(item, heldOf(item.id))] : [])),
    ...groups.map((group) => groupDraft(machine, group, heldOf)),
    ...harnesses,
  ];
  const filled = withChosen(machine, drafts, inSteps);
  const all = [...filled, ...recheckDrafts(machine, filled)].map((draft) => decided(machine, draft));
  return {
    drafts: all.sort((a, b) => compareText(a.id, b.id)),
    findings: [...claims.findings, ...holdings.findings],
  };
}

/** What has been given to a step. */
interface Members {
  readonly itemIds: string[];
  readonly fastenerIds: string[];
}

const fastenersAmong = (machine: Machine, ids: readonly string[]): readonly FastenerItem[] =>
  ids.flatMap((id) => {
    const item = machine.items.get(id);
    return item?.kind === "fastener" ? [item] : [];
  });

/** One step for each mechanism type in use: all of that type are built one after the other. */
function benchDrafts({ items, book }: Machine): readonly Draft[] {
  const counts = new Map<string, number>();
  for (const item of items.values())
    if (item.kind === "mechanism") counts.set(item.type.id, (counts.get(item.type.id) ?? 0) + 1);
  return book.tables.mechanism_types.flatMap((type) => {
    const times = counts.get(type.id);
    if (times === undefined) return [];
    const cautions = book.tables.mechanism_steps
      .filter((row) => row.mechanism_type === type.id && (row.caution || row.caution_zh) !== "")
      .sort((a, b) => a.order - b.order)
      .map((row) => labelsOf({ label: row.caution, label_zh: row.caution_zh }, ""));
    return [
      {
        ...emptyDraft("bench", `bench:${type.id}`, benchLabels(labelsOf(type, type.id))),
        mechanismTypeId: type.id,
        times,
        skill: "mechanism",
        cautions,
      },
    ];
  });
}

const mountDraft = (item: Item, fastenerIds: readonly string[]): Draft => ({
  ...emptyDraft("mount", `mount:${item.id}`, mountLabels(item.labels)),
  panelId: item.place.panelId,
  side: item.place.side,
  itemIds: [item.id],
  fastenerIds,
});

function groupDraft(machine: Machine, group: Group, heldOf: (id: string) => readonly string[]): Draft {
  const { id, kind, family, panelId, side, ids } = group;
  const empty = emptyDraft(kind, id, groupLabels(machine, kind, family, panelId, side));
  if (kind === "fixings") return { ...empty, panelId, side, fastenerIds: ids };
  return { ...empty, panelId, side, itemIds: ids, fastenerIds: ids.flatMap(heldOf).sort(compareText) };
}

/** Puts what somebody has moved into derived steps there; a step that nothing else is in is made for it. */
function withChosen(
  machine: Machine,
  drafts: readonly Draft[],
  inSteps: ReadonlyMap<string, Members>,
): readonly Draft[] {
  const byId = new Map(drafts.map((draft) => [draft.id, draft]));
  for (const [stepId, { itemIds, fastenerIds }] of inSteps) {
    const kind = movableOf(stepId);
    const known = byId.get(stepId);
    if (kind === undefined || known?.kind === "own") continue;
    const places = [...itemIds, ...fastenerIds].flatMap((id) => machine.items.get(id)?.place ?? []);
    const draft = known ?? {
      ...emptyDraft(kind, stepId, madeLabels(machine, kind, stepId)),
      ...sideOf(places),
    };
    byId.set(stepId, {
      ...draft,
      itemIds: [...draft.itemIds, ...itemIds].sort(compareText),
      fastenerIds: [...draft.fastenerIds, ...fastenerIds].sort(compareText),
    });
  }
  return [...byId.values()];
}

/** `devices:playfield:under:lamp:1.2` names what is in it. */
function madeLabels(machine: Machine, kind: NonNullable<ReturnType<typeof movableOf>>, stepId: string) {
  const [, first = "", side = "", ...rest] = stepId.split(":");
  if (kind === "mount") return mountLabels(machine.items.get(first)?.labels ?? { en: first, zh: first });
  const hasFamily = kind === "devices" || kind === "fixings";
  return groupLabels(
    machine,
    kind,
    hasFamily ? (rest[0] ?? "") : "",
    first,
    side === "top" ? "top" : "under",
  );
}

/** One for each panel side with fasteners that are checked again; they are driven in the other steps. */
function recheckDrafts(machine: Machine, drafts: readonly Draft[]): readonly Draft[] {
  const bySide = new Map<string, FastenerItem[]>();
  for (const fastener of fastenersAmong(
    machine,
    drafts.flatMap((draft) => draft.fastenerIds),
  )) {
    if (!fastener.moments.includes("recheck")) continue;
    const key = `recheck:${fastener.place.panelId}:${fastener.place.side}`;
    const known = bySide.get(key);
    if (known === undefined) bySide.set(key, [fastener]);
    else known.push(fastener);
  }
  return [...bySide].flatMap(([id, fasteners]) => {
    const [first] = fasteners;
    if (first === undefined) return [];
    const { panelId, side } = first.place;
    const labels = groupLabels(machine, "recheck", "", panelId, side);
    const recheckIds = fasteners.map((fastener) => fastener.id).sort(compareText);
    return [{ ...emptyDraft("recheck", id, labels), panelId, side, recheckIds }];
  });
}

/** With what somebody has chosen for the step as a whole: its station and its time. */
function decided(machine: Machine, draft: Draft): Draft {
  const station = machine.choices.get("station")?.get(draft.id)?.value ?? "";
  const minutes = minutesOf(machine.choices.get("time")?.get(draft.id)?.value ?? "");
  const isStation = machine.book.tables.stations.some((row) => row.id === station);
  if (!isStation && minutes === null) return draft;
  return {
    ...draft,
    stationId: isStation ? station : draft.stationId,
    setSeconds: minutes === null ? draft.setSeconds : minutes * 60,
  };
}

/** Minutes as a choice gives them; null: it gives none. */
export function minutesOf(text: string): number | null {
  const minutes = Number(text);
  return text.trim() === "" || !Number.isFinite(minutes) || minutes < 0 ? null : minutes;
}
