import type { LineResult, PlacedElement } from "@pinwright/engine";
import { bookTerm, type SheetLanguage } from "@pinwright/words";
import { shortNumber } from "./compose/number.ts";
import { label, say } from "./compose/say.ts";

/** Name of an item in the languages of a sheet. */
export function itemName(line: LineResult, itemId: string, language: SheetLanguage, joint = " · "): string {
  const item = line.machine.items.get(itemId);
  const parent = item?.parentId ?? null;
  const own = label(language, item?.labels ?? { en: "", zh: "" }, itemId, joint);
  // A mechanism's part is called by its kind only: its mechanism says which.
  if (parent === null) return own;
  const mechanism = line.machine.items.get(parent);
  return say(
    language,
    (_, l) => {
      const of = (labels: { en: string; zh: string } | undefined, id: string): string =>
        labels === undefined || labels.en === ""
          ? id
          : l === "zh" && labels.zh !== ""
            ? labels.zh
            : labels.en;
      const [outer, inner] = [of(mechanism?.labels, parent), of(item?.labels, itemId)];
      return inner.includes(outer) ? inner : `${outer}: ${inner}`;
    },
    joint,
  );
}

/** Name of a supply in the languages of a sheet. */
export function supplyName(
  line: LineResult,
  supplyId: string,
  language: SheetLanguage,
  joint = " · ",
): string {
  const supply = line.machine.book.tables.supplies.find((s) => s.id === supplyId);
  return label(language, { en: supply?.label ?? "", zh: supply?.label_zh ?? "" }, supplyId, joint);
}

/** A name with its volts, unless it says them itself: `Coil supply 48 V`, `Bus 12 V`. */
export function withVolts(name: string, volts: number, joint = " "): string {
  const figure = `${shortNumber(volts, 1)} V`;
  return ` ${name} `.includes(` ${figure} `) ? name : `${name}${joint}${figure}`;
}

/** Name and volts of a supply in the languages of a sheet. */
export function supplyTitle(line: LineResult, supplyId: string, language: SheetLanguage): string {
  const supply = line.machine.book.tables.supplies.find((s) => s.id === supplyId);
  const name = supplyName(line, supplyId, language);
  return supply === undefined ? name : withVolts(name, supply.volts, " · ");
}

/** A current for the bench: two figures below 10 A, one decimal above. */
export function ampsText(amps: number): string {
  const size = Math.abs(amps);
  return size >= 10 ? amps.toFixed(1) : size >= 0.995 ? amps.toFixed(2) : shortNumber(amps, 3);
}

/** `83 %`. */
export function percentText(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** Volts with one decimal, two below 10 V. */
export function voltsText(volts: number): string {
  return Math.abs(volts) >= 9.995 ? volts.toFixed(1) : (Math.round(volts * 100) / 100 + 0).toFixed(2);
}

/** First texts of a list, and how many more there are. */
export function someOf(texts: readonly string[], most: number, language: SheetLanguage): string {
  const own = [...new Set(texts)];
  if (own.length <= most) return own.join(", ");
  const rest = own.length - (most - 1);
  return `${own.slice(0, most - 1).join(", ")}, ${say(language, (w) => w.machine.more(rest), " · ")}`;
}

/** What an element is and its figure, as an owner reads it. */
export function elementText(element: PlacedElement, language: SheetLanguage): string {
  const { row } = element;
  const control = (row.control ?? "").replace(/^(?:input|driver) /u, "");
  const ohm = row.ohm === null ? "–" : shortNumber(row.ohm, 3);
  return say(
    language,
    ({ machine: { elements: e, speeds } }, l) => {
      const name = bookTerm(l, control);
      switch (row.kind) {
        case "coil":
          return e.coil(ohm);
        case "motor":
          return e.motor(ohm);
        case "speaker":
          return e.speaker(ohm);
        case "load":
          return e.load(row.amp === null ? "–" : shortNumber(row.amp, 3));
        case "contact":
          return row.normally === "closed" ? e.contactClosed(name) : e.contact(name);
        case "driver":
          return e.driver(name);
        case "input":
          return e.input(name);
        case "resistor":
          return e.resistor(ohm);
        case "capacitor":
          return e.capacitor(row.uf === null ? "–" : String(row.uf));
        case "fuse":
          return e.fuse(name, row.amp === null ? "–" : shortNumber(row.amp, 2), speeds.resettable);
        case "source":
          return e.source(row.volt === null ? "–" : shortNumber(row.volt, 1));
        case "led":
          return e.led;
        case "diode":
          return e.diode;
        case "link":
          return e.link;
      }
    },
    " · ",
  );
}
