import type { ReadingRecord, UnitState } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import type { Block } from "../compose/flow.ts";
import { label } from "../compose/say.ts";
import type { TableColumn } from "../compose/table.ts";
import { headed, listed, plain, row } from "./certificate-parts.ts";
import { type CertificateInput, headsOf, overId, wordsOf } from "./texts.ts";

/** Whether an instrument could be trusted when something was read with it; null: the shop has no such instrument. */
export function isCalibrated(
  { instruments }: Pick<CertificateInput, "instruments">,
  { instrument, source }: ReadingRecord,
): boolean | null {
  const known = instruments.get(instrument);
  if (known === undefined) return null;
  return known.calibratedUntil === "" || source.at.slice(0, 10) <= known.calibratedUntil;
}

/** What was read last in each test of some units, by the instrument. */
function lastReadings(states: readonly UnitState[]): ReadonlyMap<string, readonly ReadingRecord[]> {
  const found = new Map<string, ReadingRecord[]>();
  for (const { readings } of states)
    for (const list of readings.values()) {
      const last = list.at(-1);
      if (last === undefined || last.instrument === "") continue;
      const own = found.get(last.instrument);
      if (own === undefined) found.set(last.instrument, [last]);
      else own.push(last);
    }
  return new Map([...found].sort(([a], [b]) => compareText(a, b)));
}

/** Instruments with which not every reading that stands was taken within their calibration. */
export const doubtful = (input: CertificateInput, states: readonly UnitState[]): readonly string[] =>
  [...lastReadings(states)]
    .filter(([, list]) => list.some((one) => isCalibrated(input, one) !== true))
    .map(([id]) => id);

/** Every instrument that a reading stands on: how long it is calibrated, how many readings, from when to when. */
export function instrumentBlocks(
  input: CertificateInput,
  states: readonly UnitState[],
  widthMm: number,
): readonly Block[] {
  const heads = headsOf(input.options);
  const words = wordsOf(input.options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.certificate.instrument), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.calibratedUntil), whole: true },
    { header: heads((w) => w.records.certificate.readings), align: "end" },
    { header: heads((w) => w.records.certificate.fromTo), whole: true },
    { header: heads((w) => w.records.certificate.calibration), weight: "bold" },
  ];
  const rows = [...lastReadings(states)].map(([id, list]) => {
    const known = input.instruments.get(id);
    const days = list.map(({ source }) => source.at.slice(0, 10)).sort(compareText);
    const bad = list.filter((one) => isCalibrated(input, one) === false).length;
    const name =
      known === undefined
        ? id
        : label(input.options.language, { en: known.label, zh: known.label_zh }, id, " · ");
    return row([
      overId(name, id),
      known === undefined ? "—" : known.calibratedUntil === "" ? "—" : known.calibratedUntil,
      String(list.length),
      [...new Set([days[0], days.at(-1)])].join(" … "),
      words(({ records: { certificate: w } }) => {
        if (known === undefined) return w.notInShop;
        if (known.calibratedUntil === "") return w.needsNone;
        return bad === 0 ? w.calibrated : w.ranOut(bad);
      }),
    ]);
  });
  return headed(
    input,
    (w) => w.records.certificate.instruments,
    widthMm,
    rows.length === 0
      ? [plain(input, (w) => w.records.certificate.noInstruments, widthMm)]
      : [
          plain(input, (w) => w.records.certificate.instrumentsHint, widthMm),
          ...listed(input, columns, rows, widthMm),
        ],
  );
}
