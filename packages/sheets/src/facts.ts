import type { HarnessResult, LineResult, ListEnd, SizedWire } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { shortNumber } from "./compose/number.ts";
import { label, say } from "./compose/say.ts";

/** Where an end is held: the landing, or the splice by its number. */
export function endPlace(end: ListEnd, language: SheetLanguage): string {
  return end.landingId ?? say(language, (w) => `${w.common.splice} ${end.localId}`, " · ");
}

/** Where an end is held, and in small letters under it what that is. */
export function endPlaceNamed(end: ListEnd, language: SheetLanguage): string {
  const name = end.labels === null ? "" : label(language, end.labels, "", " · ");
  return name === "" ? endPlace(end, language) : `${endPlace(end, language)}\n${name}`;
}

/** Cavity number, or the name of a terminal; blank at a splice. */
export function endCavity(end: ListEnd): string {
  if (end.kind === "splice") return "";
  return end.pin === null ? end.localId : String(end.pin);
}

/** `bd.io:j2.3`: where a wire's end goes, in one line, from a point or splice id. */
export function pointText(line: LineResult, id: string, language: SheetLanguage): string {
  return !line.machine.points.has(id) && id.startsWith("splice:")
    ? say(language, (w) => `${w.common.splice} ${id.slice(id.lastIndexOf(":") + 1)}`, " · ")
    : id;
}

/** `4-6`: the number of a wire as it stands on its label, on every sheet. */
export function wireNo(harness: HarnessResult, number: number): string {
  return `${harness.harness.number}-${number}`;
}

/** Metres of wire to fetch, to two decimals, rounded up. */
export function metresUp(metres: number): string {
  return (Math.ceil(metres * 100 - 1e-6) / 100).toFixed(2);
}

/** `AWG 22`, or `0.75 mm²` for a wire that is not sold by gauge. */
export function gaugeText(type: SizedWire["wireType"]): string {
  return type.awg === null ? `${shortNumber(type.area_mm2, 3)} mm²` : `AWG ${type.awg}`;
}

/** Name of a net in the languages of a sheet. */
export function netName(line: LineResult, netId: string, language: SheetLanguage, joint = " · "): string {
  const net = line.machine.nets.get(netId);
  return label(language, { en: net?.label ?? "", zh: net?.label_zh ?? "" }, netId, joint);
}

/** Wires of a harness by their ids. */
export function wiresById(harness: HarnessResult): ReadonlyMap<string, SizedWire> {
  return new Map(harness.wires.map((w) => [w.id, w]));
}

/** Millimetres of wire that a harness takes as cut. */
export function cutMm(harness: HarnessResult): number {
  return harness.wires.reduce((sum, w) => sum + w.cutMm, 0);
}
