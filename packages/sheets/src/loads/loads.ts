import type { Corner, LineResult, LoadVolts, PlacedElement } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { powerOf } from "../circuits/index.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import type { Grid, GridValue } from "../compose/grid.ts";
import { shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { ampsText, itemName, percentText, supplyTitle, voltsText } from "../machine-facts.ts";
import { composeMachineListing } from "../machine-listing.ts";
import type { SheetOptions } from "../options.ts";
import { type MomentNumbers, momentNumbers, momentRows } from "./moments.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** What is left of the volts that a load is made for, in its worst moment at its worst corner. */
const leftOf = ({ worstV, nominalV }: LoadVolts): number => (nominalV === 0 ? 1 : worstV.least / nominalV);

/** Loads by supply in the order of the schedule, those that get least of their volts first. */
function bySupply(line: LineResult): readonly (readonly [string, readonly LoadVolts[]])[] {
  const groups = new Map<string, LoadVolts[]>(powerOf(line).supplies.map(({ supply }) => [supply.id, []]));
  for (const load of line.electric.loads.values()) {
    const own = groups.get(load.supplyId);
    if (own === undefined) groups.set(load.supplyId, [load]);
    else own.push(load);
  }
  return [...groups].flatMap(([id, loads]) =>
    loads.length === 0
      ? []
      : [[id, loads.sort((a, b) => leftOf(a) - leftOf(b) || compareText(a.loadId, b.loadId))] as const],
  );
}

/** Every load with the volts that it gets, worst first within each supply, and the moments that this is in. */
export function composeLoads(line: LineResult, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words: Say = (choose) => say(language, choose);
  const elements = new Map(line.machine.elements.map((e) => [e.id, e]));
  const groups = bySupply(line);
  const moments = momentNumbers(groups.flatMap(([, loads]) => loads));
  const continued = words((w) => w.common.continued);
  const rows = groups.flatMap(([supplyId, loads]): TableRow[] => [
    {
      kind: "group",
      text: supplyTitle(line, supplyId, language),
      detail: say(language, (w) => w.machine.loads(loads.length), " · "),
    },
    ...loads.map(
      (load): TableRow => ({
        kind: "row",
        cells: loadCells(line, load, elements.get(load.loadId) ?? null, moments, language),
      }),
    ),
  ]);
  return composeMachineListing(line, options, {
    kind: "loads",
    paper: "a4-portrait",
    facts: [say(language, (w) => w.machine.loads(line.electric.loads.size), " · ")],
    blocks: (widthMm) => [
      paragraph(
        words((w) => `${w.machine.drops.hint} ${w.machine.drops.ohmRule} ${w.machine.corners}`),
        widthMm,
        TEXT.small,
      ),
      ...table(columns(words), rows, widthMm, continued),
      gap(5),
      {
        ...paragraph(
          words((w) => w.machine.drops.momentsTitle),
          widthMm,
          TEXT.large,
          true,
        ),
        keepMm: 20,
      },
      {
        ...paragraph(
          words((w) => w.machine.drops.momentsHint),
          widthMm,
          TEXT.small,
        ),
        keepMm: 20,
      },
      ...table(
        [
          { header: words((w) => w.machine.drops.moment), weight: "bold", whole: true },
          { header: words((w) => w.machine.drops.on), grow: true },
        ],
        momentRows(line, moments, language),
        widthMm,
        continued,
      ),
    ],
    grids: [loadGrid(line, groups, elements, moments, language)],
  });
}

/** Room for a corner, for a range of volts up to the mains, and for one of small currents, in one line each. */
const CORNER_MM = 19;
const VOLTS_MM = 17;
const RANGE_MM = 16;

function columns(words: Say): TableColumn[] {
  const right = { align: "end", whole: true, detail: true } as const;
  return [
    { header: words((w) => w.machine.drops.load), detail: true, grow: true },
    { ...right, header: words((w) => w.machine.drops.nominal) },
    { ...right, header: words((w) => w.machine.drops.alone), minMm: VOLTS_MM },
    { ...right, header: words((w) => w.machine.drops.together), minMm: VOLTS_MM },
    { ...right, header: words((w) => w.machine.drops.left), weight: "bold", minMm: CORNER_MM },
    { ...right, header: words((w) => w.machine.drops.amps), minMm: RANGE_MM },
    { ...right, header: words((w) => w.machine.drops.ohm), weight: "bold" },
    { header: words((w) => w.machine.drops.moment), align: "end" },
  ];
}

/** Nominal figure, and under it the least and the most. */
const spread = ({ nominal, least, most }: LoadVolts["aloneV"], text: (value: number) => string): string =>
  `${text(nominal)}\n${text(least)}–${text(most)}`;

function cornerText({ contacts, supply, temperature }: Corner, language: SheetLanguage): string {
  return say(language, ({ machine: { drops: d } }) =>
    [d.contacts[contacts], d.supply[supply], d.temperature[temperature]].join(", "),
  );
}

/** Resistance of a winding at 20 °C, as the owner measures it. */
const ohmOf = (element: PlacedElement | null): number | null =>
  element !== null && (element.row.kind === "coil" || element.row.kind === "motor") ? element.row.ohm : null;

/** Name of a load; windings of one item are told apart by their control. */
function loadName(
  line: LineResult,
  load: LoadVolts,
  element: PlacedElement | null,
  language: SheetLanguage,
): string {
  const own = element?.row.control ?? "";
  return `${itemName(line, load.itemId, language)}${own === "" ? "" : `, ${own}`}`;
}

function loadCells(
  line: LineResult,
  load: LoadVolts,
  element: PlacedElement | null,
  moments: MomentNumbers,
  language: SheetLanguage,
): readonly string[] {
  const ohm = ohmOf(element);
  return [
    `${loadName(line, load, element, language)}\n${load.itemId}`,
    shortNumber(load.nominalV, 1),
    spread(load.aloneV, voltsText),
    spread(load.worstV, voltsText),
    `${percentText(leftOf(load))}\n${cornerText(load.worstV.leastAt, language)}`,
    spread(load.amps, ampsText),
    ohm === null ? "" : shortNumber(ohm, 2),
    moments.nameOf(load.momentId, language),
  ];
}

function loadGrid(
  line: LineResult,
  groups: readonly (readonly [string, readonly LoadVolts[]])[],
  elements: ReadonlyMap<string, PlacedElement>,
  moments: MomentNumbers,
  language: SheetLanguage,
): Grid {
  const own = language === "both" ? "en" : language;
  const d = sheetWords(own).machine.drops;
  const round = (value: number): number => Math.round(value * 1000) / 1000;
  const three = ({ nominal, least, most }: LoadVolts["aloneV"]): GridValue[] =>
    [nominal, least, most].map(round);
  const named = (name: string): string[] => [name, `${name} min`, `${name} max`];
  return {
    name: sheetWords(own).kinds.loads,
    header: [
      sheetWords(own).machine.schedule.supply,
      "id",
      d.load,
      d.nominal,
      ...named(d.alone),
      ...named(d.together),
      `${d.left} %`,
      d.corner,
      ...named(d.amps),
      d.ohm,
      d.moment,
    ],
    rows: groups.flatMap(([supplyId, loads]) =>
      loads.map((load) => {
        const element = elements.get(load.loadId) ?? null;
        return [
          supplyId,
          load.loadId,
          loadName(line, load, element, own),
          load.nominalV,
          ...three(load.aloneV),
          ...three(load.worstV),
          Math.round(leftOf(load) * 1000) / 10,
          cornerText(load.worstV.leastAt, own),
          ...three(load.amps),
          ohmOf(element) ?? "",
          moments.nameOf(load.momentId, own),
        ];
      }),
    ),
  };
}
