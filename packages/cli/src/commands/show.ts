import { nearest } from "@pinwright/book";
import {
  type About,
  aboutId,
  knownIds,
  type Place,
  type PointAbout,
  type Thing,
  Things,
  type WireAbout,
} from "@pinwright/engine";
import { documentsAbout } from "@pinwright/sheets";
import { findingWords } from "@pinwright/words";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import { STATUS } from "../terminal.ts";

const placeText = (place: Place): string =>
  `${place.panelId}, ${place.side}, x ${place.xMm.toFixed(1)} mm, y ${place.yMm.toFixed(1)} mm${place.rotationDeg === 0 ? "" : `, ${place.rotationDeg.toFixed(0)}°`}${place.zMm === 0 ? "" : `, ${place.zMm.toFixed(0)} mm off the panel`}`;

const wireText = ({ wire, harness }: WireAbout, from: string | null): string => {
  const label = `${harness.harness.number}-${wire.number}`;
  const ends = from === null ? `${wire.a} → ${wire.b}` : `→ ${wire.a === from ? wire.b : wire.a}`;
  return `wire ${label} ${wire.colour} ${wire.wireType.area_mm2} mm² ${wire.finishedMm} mm (cut ${wire.cutMm} mm) ${ends} in ${harness.harness.id}`;
};

function pointLines({ point, netId, wires }: PointAbout): readonly string[] {
  const use = point.use === "live" ? "" : ` (${point.use})`;
  const label = point.label === "" ? "" : ` ${point.label}`;
  const net = netId === null ? (point.use === "live" ? "no net" : "") : `net ${netId}`;
  return [
    `  ${point.id}${label}${use}${net === "" ? "" : `: ${net}`}`,
    ...wires.map((w) => `    ${wireText(w, point.id)}`),
  ];
}

function aboutText(about: About, sheets: readonly string[]): string {
  const lines = [
    `${about.kind} ${about.id}${about.labels === null ? "" : `: ${about.labels.en} / ${about.labels.zh}`}`,
  ];
  if (about.item !== null && about.item.id !== about.id)
    lines.push(`  of ${about.item.id}: ${about.item.labels.en}`);
  if (about.item !== null) lines.push(`  type ${about.item.type.id}`);
  if (about.place !== null) lines.push(`  at ${placeText(about.place)}`);
  if (about.children.length > 0) lines.push(`holds: ${about.children.join(" ")}`);
  if (about.points.length > 0) lines.push("points:", ...about.points.flatMap(pointLines));
  const under = new Set(about.points.flatMap((p) => p.wires.map((w) => w.wire.id)));
  const others = about.wires.filter((w) => about.kind === "wire" || !under.has(w.wire.id));
  if (others.length > 0) lines.push("wires:", ...others.map((w) => `  ${wireText(w, null)}`));
  if (about.kind === "wire" && about.wires[0] !== undefined)
    lines.push(`way: ${about.wires[0].wire.path.join(" ")}`);
  if (sheets.length > 0) lines.push("sheets:", ...sheets.map((name) => `  ${name}`));
  if (about.findings.length > 0)
    lines.push(
      "findings:",
      ...about.findings.map((f) => `  ${f.severity} ${f.rule}: ${findingWords("en", f.rule).say(f)}`),
    );
  return `${lines.join("\n")}\n`;
}

/** What the page of a thing in the app also says of it: what fails with it, its steps, tests and parts. */
function thingText({ figures, shares, controls, steps, tests, parts }: Thing): string {
  const named = (ids: readonly { readonly id: string }[]): string => ids.map(({ id }) => id).join(" ");
  const lines = [
    ...Object.entries(figures).map(([name, value]) => `${name}: ${value}`),
    ...controls.map(
      ({ pointId, kind, address }) => `${kind} ${pointId}${address === null ? "" : ` (address ${address})`}`,
    ),
    ...shares.map(({ kind, of, things }) => `same ${kind} ${of.id}: ${named(things)}`),
    ...steps.map(({ id, number, why }) => `step ${number} ${id}: ${why}`),
    ...(tests.length === 0 ? [] : [`tests: ${named(tests)}`]),
    ...parts.map(({ id, orderNumber }) => `part ${id}${orderNumber === "" ? "" : `, order ${orderNumber}`}`),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

/** Shows where one id is and everything that it touches. */
export const showCommand: Command = {
  name: "show",
  operands: "BOOK ID",
  about:
    "show where an id is, every pin, wire, colour, length and sheet that it touches, and what fails with it",
  count: [2, 2],
  options: { ...BOOK_OPTIONS, json: { type: "boolean", about: "write it as JSON" } },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    if (fatalFaults(loaded.faults).length > 0) {
      for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
      return STATUS.failed;
    }
    const result = runLine(loaded);
    const id = call.positionals[1] ?? "";
    const about = aboutId(result, id);
    const thing = new Things(result).of(id);
    if (about === null && thing !== null) {
      const head = `${thing.kind} ${thing.id}: ${thing.labels.en} / ${thing.labels.zh}\n`;
      terminal.out(call.flag("json") ? `${JSON.stringify(thing, null, 2)}\n` : head + thingText(thing));
      return STATUS.good;
    }
    if (about === null) {
      const near = nearest(id, knownIds(result));
      terminal.err(
        `${loaded.path} has nothing called "${id}"${near === null ? "" : `; did you mean "${near}"?`}\n`,
      );
      return STATUS.found;
    }
    const sheets = documentsAbout(result, about.item?.id ?? null, about.harnessIds);
    terminal.out(
      call.flag("json")
        ? `${JSON.stringify({ ...about, sheets }, null, 2)}\n`
        : aboutText(about, sheets) + (thing === null ? "" : thingText(thing)),
    );
    return STATUS.good;
  },
};
