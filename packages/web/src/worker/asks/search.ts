import type { Item } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { type Language, subjectName } from "@pinwright/words";
import type { Model } from "../model.ts";

/** Something that the search box found. */
export interface Found {
  readonly kind:
    | "item"
    | "net"
    | "wire"
    | "harness"
    | "panel"
    | "lane"
    | "waypoint"
    | "crossing"
    | "cutout"
    | "part"
    | "connector"
    | "board-type"
    | "fit"
    | "step"
    | "run";
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
}

const MOST = 40;

/** What people call an item: with its kind and number where it has one, `Coil 17, Ramp diverter: coil`. */
function itemLabel(item: Item, language: Language): string {
  const number = item.kind === "device" ? item.number : item.kind === "board" ? item.address : null;
  if (number === null) return item.labels[language];
  const deviceClass = item.kind === "device" ? item.type.class : "";
  const { id, kind, labels } = item;
  return subjectName(language, {
    ...{ table: `${kind}s`, id, labels, number: String(number), deviceClass },
    places: [],
  });
}

/** What may be found, with what it is called besides. */
interface Candidate extends Found {
  readonly names?: readonly string[];
}

function* candidates({ line, book, shop }: Model): Generator<Candidate> {
  const { machine } = line;
  for (const item of machine.items.values())
    yield {
      ...{ kind: "item", id: item.id, label: itemLabel(item, "en"), labelZh: itemLabel(item, "zh") },
      names: [item.labels.en, item.labels.zh],
    };
  for (const harness of line.harnesses.values()) {
    const { id, number } = harness.harness;
    yield {
      kind: "harness",
      id,
      label: `H${number} ${harness.labels.en}`,
      labelZh: `H${number} ${harness.labels.zh}`,
    };
    for (const wire of harness.wires) {
      const label = `${number}-${wire.number}`;
      yield { kind: "wire", id: wire.id, label, labelZh: label };
    }
  }
  for (const net of machine.nets.values())
    yield { kind: "net", id: net.id, label: net.label, labelZh: net.label_zh };
  for (const panel of machine.panels.values())
    yield { kind: "panel", id: panel.id, label: panel.label, labelZh: panel.label_zh };
  for (const lane of book.tables.lanes) yield { kind: "lane", id: lane.id, label: "", labelZh: "" };
  for (const { id } of book.tables.waypoints) yield { kind: "waypoint", id, label: "", labelZh: "" };
  for (const { id } of book.tables.crossings) yield { kind: "crossing", id, label: "", labelZh: "" };
  for (const { id } of book.tables.cutouts) yield { kind: "cutout", id, label: "", labelZh: "" };
  for (const { id, number, labels } of line.steps.steps)
    yield { kind: "step", id, label: `${number}. ${labels.en}`, labelZh: `${number}. ${labels.zh}` };
  for (const { typeId, labels } of line.boards.register)
    yield { kind: "board-type", id: typeId, label: labels.en, labelZh: labels.zh };
  for (const { id, label, label_zh } of book.tables.fits) yield { kind: "fit", id, label, labelZh: label_zh };
  for (const part of book.tables.parts)
    yield { kind: "part", id: part.id, label: part.label, labelZh: part.label_zh };
  for (const run of shop.tables.runs)
    yield { kind: "run", id: run.id, label: run.label, labelZh: run.label_zh };
}

/** 0 is best; null: does not match. */
function rank(found: Candidate, words: readonly string[], whole: string): number | null {
  const texts = [found.id, found.label, found.labelZh, ...(found.names ?? [])].map((text) =>
    text.toLowerCase(),
  );
  if (!words.every((word) => texts.some((text) => text.includes(word)))) return null;
  if (texts.includes(whole)) return 0;
  if (texts.some((text) => text.startsWith(whole))) return 1;
  return texts.some((text) => text.includes(whole)) ? 2 : 3;
}

/** Items, nets, wires, harnesses, panels, ways, cutouts, steps, kinds of board, fits and parts whose id, number or label has all the words. */
export function search(model: Model, text: string): readonly Found[] {
  const whole = text.trim().toLowerCase();
  if (whole === "") return [];
  const words = whole.split(/\s+/);
  const ranked = [...candidates(model)].flatMap((one) => {
    const place = rank(one, words, whole);
    const { names: _, ...found } = one;
    return place === null ? [] : [{ found, place }];
  });
  // A lamp before the net that is called after it.
  const after = ({ kind }: Found): number => (kind === "item" ? 0 : 1);
  ranked.sort(
    (a, b) => a.place - b.place || after(a.found) - after(b.found) || compareText(a.found.id, b.found.id),
  );
  return ranked.slice(0, MOST).map((one) => one.found);
}
