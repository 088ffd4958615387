/**
 * Assigns the switches of generated matrices to crossings with the search that the proposal uses, proves the optimum of
 * small ones with a mixed-integer program, and writes what came out to `results/matrix.csv`. Of matrices that are too
 * large for a proof it gives the quick bound and what four times the steps find.
 *
 *     npx tsx prove/matrix.ts
 */
import { assignBoundMm, assignedMm, searchAssignment, usualAssignSteps } from "@pinwright/engine";
import { assignMilp, MATRIX_KINDS, type MatrixSize, MOST_SITES, matrixInstance } from "@pinwright/jobs";
import { writeResults } from "./write-results.ts";

const SIZES: readonly MatrixSize[] = [
  { columns: 3, rows: 3, sites: 7 },
  { columns: 3, rows: 3, sites: 9 },
  { columns: 4, rows: 4, sites: 8 },
  { columns: 8, rows: 8, sites: 8 },
  { columns: 4, rows: 4, sites: 11 },
  { columns: 5, rows: 5, sites: 8 },
  { columns: 6, rows: 6, sites: 8 },
  { columns: 8, rows: 8, sites: 9 },
  { columns: 8, rows: 8, sites: 24 },
  { columns: 8, rows: 8, sites: 64 },
];
const SECONDS_EACH = 30;
const LONG = 4;

const rows: string[] = [];
const over: number[] = [];
for (const [k, kind] of MATRIX_KINDS.entries())
  for (const [i, size] of SIZES.entries()) {
    const variant = (k + i) % 4;
    const problem = matrixInstance(kind, size, variant);
    const found = searchAssignment(problem, null);
    if (found === null) throw new Error(`${kind} ${variant}: no assignment`);
    const mm = assignedMm(problem, found);
    const proof =
      size.sites <= MOST_SITES ? await assignMilp(problem, found, { seconds: SECONDS_EACH }) : null;
    const long =
      proof === null
        ? searchAssignment(problem, null, { steps: LONG * usualAssignSteps(problem), seed: 2 })
        : null;
    const overPct = proof?.status === "optimal" ? 100 * (mm / proof.valueMm - 1) : null;
    if (overPct !== null) over.push(overPct);
    const row = [
      `${kind}-${variant}`,
      size.columns,
      size.rows,
      size.sites,
      mm.toFixed(1),
      proof?.valueMm.toFixed(1) ?? "",
      proof?.boundMm.toFixed(1) ?? "",
      assignBoundMm(problem, mm).toFixed(1),
      long === null ? "" : assignedMm(problem, long).toFixed(1),
      overPct?.toFixed(3) ?? "",
      proof?.status ?? "too large",
    ].join(",");
    rows.push(row);
    process.stdout.write(`${row}\n`);
  }
const mean = over.reduce((sum, x) => sum + x, 0) / over.length;
process.stdout.write(
  `${over.length} proven optima; above them: mean ${mean.toFixed(3)} %, worst ${Math.max(...over).toFixed(3)} %\n`,
);
writeResults(
  "matrix.csv",
  "instance,columns,rows,switches,searched_mm,milp_mm,milp_bound_mm,quick_bound_mm,long_search_mm,over_pct,status",
  rows,
);
