import type { LineResult } from "@pinwright/engine";
import { type Language, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { eachLeaf } from "../compose/leaves.ts";
import type { GroupMark, Mark } from "../compose/mark.ts";
import type { HazardId } from "../service-book/hazards.ts";

/** A caution that a section of the service book has to have. */
export interface NeededCaution {
  readonly hazard: HazardId;
  /** Where: the section, by the name that its caution is led to by. */
  readonly place: string;
}

/** Direct current of more than this is no extra-low voltage when touched: IEC 60335-1 clause 8.1.4. */
const TOUCHED_V = 42.4;

const CHAPTERS_OF: Readonly<Partial<Record<HazardId, readonly string[]>>> = {
  mains: ["front", "open", "pins", "charts", "power", "replace", "tests", "faults"],
  stored: ["open", "pins", "charts", "power", "replace", "faults"],
  volts: ["open", "pins", "charts", "power", "numbered-coils", "replace", "tests", "faults"],
  earth: ["pins", "charts", "power"],
  moving: ["numbered-coils", "adjust", "tests", "faults"],
  hot: ["numbered-coils", "adjust", "tests", "faults"],
  raised: ["open-field", "replace"],
  folded: ["open-backbox"],
  glass: ["open-glass", "tests"],
  springs: ["adjust"],
};

/**
 * The cautions that the book of a machine needs, from its own tables and by none of the functions that the book is
 * written with: by nets and their classes, elements, supplies, panels and poses, and for every item by what is on it.
 */
export function neededCautions(line: LineResult, headings: ReadonlySet<string>): readonly NeededCaution[] {
  const { machine } = line;
  const { tables } = machine.book;
  const items = [...machine.items.values()];
  const classesAt = new Map<string, Set<string>>();
  const soldered = new Set<string>();
  for (const { point, net } of machine.ends) {
    const own = machine.points.get(point);
    if (own === undefined) continue;
    const classes = classesAt.get(own.itemId) ?? new Set<string>();
    classes.add(tables.nets.find(({ id }) => id === net)?.class ?? machine.nets.get(net)?.class ?? "");
    classesAt.set(own.itemId, classes);
    if (own.family?.kind === "lug") soldered.add(own.itemId);
  }
  const kindsAt = (id: string): readonly string[] =>
    machine.elements.filter((element) => element.itemId === id).map(({ row }) => row.kind);
  const allKinds = new Set(machine.elements.map(({ row }) => row.kind));
  const has = (...classes: readonly string[]): boolean =>
    [...classesAt.values()].some((own) => classes.some((one) => own.has(one)));
  const moved = (purpose: string): boolean =>
    tables.pose_places.some((place) => {
      const usual = tables.poses.find((pose) => pose.usual === "yes") ?? tables.poses[0];
      const rest = tables.pose_places.find((p) => p.pose === usual?.id && p.panel === place.panel);
      const isOther =
        rest !== undefined &&
        (["x_mm", "y_mm", "z_mm", "rx_deg", "ry_deg", "rz_deg"] as const).some((c) => rest[c] !== place[c]);
      return isOther && machine.panels.get(place.panel)?.purpose === purpose;
    });
  const coilSupplies = new Set(
    [...machine.nets.values()].flatMap((net) => (net.class === "coil" ? (net.supply ?? []) : [])),
  );
  const ofMachine: Readonly<Partial<Record<HazardId, boolean>>> = {
    mains: has("mains"),
    stored: tables.supplies.some(({ stored_j: joule }) => joule !== null && joule > 0),
    volts: tables.supplies.some(({ id, volts }) => coilSupplies.has(id) && volts > TOUCHED_V),
    earth: has("earth"),
    moving: allKinds.has("coil") || allKinds.has("motor"),
    hot: allKinds.has("coil"),
    raised: moved("playfield"),
    folded: moved("backbox"),
    glass: [...machine.panels.values()].some(({ purpose }) => purpose === "glass"),
    springs: items.some(({ kind }) => kind === "mechanism"),
    solder: soldered.size > 0,
  };
  const needed = new Map<string, NeededCaution>();
  const need = (hazard: HazardId, place: string): void => {
    if (ofMachine[hazard] === true) needed.set(`${hazard}@${place}`, { hazard, place });
  };
  for (const hazard of Object.keys(ofMachine) as HazardId[])
    for (const place of CHAPTERS_OF[hazard] ?? []) if (sectionIsThere(place, headings)) need(hazard, place);
  for (const item of items) {
    const parts = item.kind === "mechanism" ? items.filter(({ parentId }) => parentId === item.id) : [];
    const own = [item, ...parts];
    const kinds = new Set(own.flatMap(({ id }) => kindsAt(id)));
    const classes = new Set(own.flatMap(({ id }) => [...(classesAt.get(id) ?? [])]));
    const isUnder =
      item.place.side === "under" && machine.panels.get(item.place.panelId)?.purpose === "playfield";
    const place =
      item.kind === "mechanism"
        ? `replace-${item.id}`
        : item.kind === "board"
          ? "replace-boards"
          : item.kind === "device" && item.parentId === null && classes.size > 0
            ? "replace-devices"
            : null;
    if (place === null) continue;
    if (classes.has("mains")) need("mains", place);
    if (classes.has("mains")) need("stored", place);
    if (classes.has("earth")) need("earth", place);
    if (kinds.has("coil") || kinds.has("motor")) need("moving", place);
    if (kinds.has("coil")) for (const one of ["hot", "volts"] as const) need(one, place);
    if (isUnder) need("raised", place);
    if (item.kind === "mechanism") need("springs", place);
    if (own.some(({ id }) => soldered.has(id))) need("solder", place);
    if (item.kind === "board" && classes.has("mains"))
      for (const one of ["mains", "stored"] as const) need(one, `board-${item.id}`);
  }
  return [...needed.values()];
}

/** Headings that a section's caution stands under, where it is not there for every machine. */
const UNDER: Readonly<Record<string, string>> = {
  "numbered-coils": "numbered:coils",
  adjust: "chapter:adjust",
  tests: "tests:owner",
  power: "chapter:power",
};
const sectionIsThere = (place: string, headings: ReadonlySet<string>): boolean =>
  headings.has(UNDER[place] ?? "front");

/** What groups of a name say, without white space: lines are broken where the page needs it. */
function saidAt(document: SheetDocument): ReadonlyMap<string, string> {
  const said = new Map<string, string>();
  const walk = (marks: readonly Mark[]): void => {
    for (const mark of marks) {
      if (mark.kind !== "group") continue;
      if (mark.anchor !== undefined && !said.has(mark.anchor)) said.set(mark.anchor, textOf(mark));
      walk(mark.marks);
    }
  };
  for (const page of document.pages) walk(page.marks);
  return said;
}

function textOf(group: GroupMark): string {
  const texts: string[] = [];
  eachLeaf(group.marks, (leaf) => {
    if (leaf.kind === "text") texts.push(leaf.text);
  });
  return squeezed(texts.join(""));
}

const squeezed = (text: string): string => text.replaceAll(/\s/gu, "");

/** Cautions that are needed and not there in full, with the words that defer to local codes; `mains@open`. */
export function missingCautions(
  document: SheetDocument,
  needed: readonly NeededCaution[],
  language: Language,
): readonly string[] {
  const { hazards, defer } = sheetWords(language).serviceBook.safety;
  const said = saidAt(document);
  const lacks = (name: string, texts: readonly string[]): boolean =>
    texts.some((text) => said.get(name)?.includes(squeezed(text)) !== true);
  const missing = needed
    .filter(({ hazard, place }) =>
      lacks(`hazard:${hazard}@${place}`, [hazards[hazard].title, hazards[hazard].says, defer]),
    )
    .map(({ hazard, place }) => `${hazard}@${place}`);
  const summed = [...new Set(needed.map(({ hazard }) => hazard))]
    .filter((hazard) => lacks(`safety:${hazard}`, [hazards[hazard].title, hazards[hazard].says]))
    .map((hazard) => `safety:${hazard}`);
  return [...missing, ...summed];
}

/** A document without the marks under a name. */
export function withoutAnchor(document: SheetDocument, name: string): SheetDocument {
  const left = (marks: readonly Mark[]): readonly Mark[] =>
    marks.flatMap((mark): readonly Mark[] => {
      if (mark.kind !== "group") return [mark];
      if (mark.anchor === name) return [];
      return [{ ...mark, marks: left(mark.marks) }];
    });
  return { ...document, pages: document.pages.map((page) => ({ ...page, marks: left(page.marks) })) };
}
