import type { HarnessResult, LineResult, SizedBranch } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";

/** Branches one after the other that hold the very same wires: one bundle, from breakout to breakout. */
interface BundleRun {
  readonly from: string;
  readonly to: string;
  readonly lengthMm: number;
  readonly ties: number;
  readonly branch: SizedBranch;
}

/** The bundles of a harness, thickest first. */
function bundleRuns(harness: HarnessResult): readonly BundleRun[] {
  const ties = new Map(harness.pinboard.branches.map((branch) => [branch.id, branch.tiesMm.length]));
  const groups = new Map<string, SizedBranch[]>();
  for (const branch of harness.branches) {
    if (branch.wireIds.length < 2) continue;
    const key = branch.wireIds.join("\n");
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [branch]);
    else group.push(branch);
  }
  const runs = [...groups.values()].flatMap((branches): BundleRun[] => {
    const [branch] = branches;
    if (branch === undefined) return [];
    const inner = new Set(branches.map((b) => b.b));
    const first = branches.find((b) => !inner.has(b.a)) ?? branch;
    const starts = new Set(branches.map((b) => b.a));
    const last = branches.find((b) => !starts.has(b.b)) ?? branch;
    return [
      {
        from: nodeName(first.a),
        to: nodeName(last.b),
        lengthMm: branches.reduce((sum, b) => sum + b.lengthMm, 0),
        ties: branches.reduce((sum, b) => sum + (ties.get(b.id) ?? 0), 0),
        branch,
      },
    ];
  });
  return runs.sort((a, b) => b.branch.bundle.laidMm - a.branch.bundle.laidMm || (a.from < b.from ? -1 : 1));
}

const nodeName = (id: string): string => id.replace(/^landing:/u, "");

/** Every bundle with its length, its diameters (as packed, as laid, by the rule of thumb), its ties and sleeve. */
export function bundleBlocks(
  line: LineResult,
  harness: HarnessResult,
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const holders = new Map(line.machine.shop.tables.holders.map((holder) => [holder.id, holder]));
  const holderName = (id: string | null): string => {
    const holder = id === null ? undefined : holders.get(id);
    return holder === undefined ? "—" : label(language, { en: holder.label, zh: holder.label_zh }, holder.id);
  };
  const columns: TableColumn[] = [
    { header: words((w) => w.common.from), grow: true },
    { header: words((w) => w.common.to), grow: true },
    { whole: true, header: words((w) => w.bundles.lengthMm), weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.bundles.wires), align: "end" },
    { whole: true, header: words((w) => w.bundles.laid), weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.bundles.packed), align: "end" },
    { whole: true, header: words((w) => w.bundles.rule), align: "end" },
    { whole: true, header: words((w) => w.bundles.ties), align: "end" },
    { header: words((w) => w.bundles.tie), grow: true },
  ];
  const rows = bundleRuns(harness).map(
    ({ from, to, lengthMm, ties, branch }): TableRow => ({
      kind: "row",
      cells: [
        from,
        to,
        shortMm(lengthMm),
        String(branch.wireIds.length),
        branch.bundle.laidMm.toFixed(1),
        branch.bundle.packedMm.toFixed(1),
        branch.bundle.ruleMm.toFixed(1),
        String(ties),
        holderName(branch.bundle.tieId),
      ],
    }),
  );
  if (rows.length === 0) return [];
  return [
    paragraph(
      words((w) => w.bundles.title),
      widthMm,
      TEXT.large,
      true,
    ),
    paragraph(
      words((w) => w.bundles.note(line.machine.shop.numbers.laid_factor)),
      widthMm,
      TEXT.small,
    ),
    ...table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

/** The same for a spreadsheet. */
export function bundleGrid(harness: HarnessResult, language: SheetLanguage): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  return {
    name: w.bundles.title,
    header: [
      w.common.harness,
      w.common.from,
      w.common.to,
      w.bundles.lengthMm,
      w.bundles.wires,
      w.bundles.laid,
      w.bundles.packed,
      w.bundles.rule,
      w.bundles.ties,
      w.bundles.tie,
    ],
    rows: bundleRuns(harness).map(({ from, to, lengthMm, ties, branch }) => [
      harness.harness.number,
      from,
      to,
      lengthMm,
      branch.wireIds.length,
      branch.bundle.laidMm,
      branch.bundle.packedMm,
      branch.bundle.ruleMm,
      ties,
      branch.bundle.tieId ?? "",
    ]),
  };
}
