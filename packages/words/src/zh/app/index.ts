import { bench } from "./bench.ts";
import { benchFloor } from "./bench-floor.ts";
import { benchQuality } from "./bench-quality.ts";
import { benchRecords } from "./bench-records.ts";
import { benchSheets } from "./bench-sheets.ts";
import { benchTrace } from "./bench-trace.ts";
import { benchUnit } from "./bench-unit.ts";
import { benchUnits } from "./bench-units.ts";
import { boards } from "./boards.ts";
import { checks } from "./checks.ts";
import { common } from "./common.ts";
import { compareApp } from "./compare-app.ts";
import { electric } from "./electric.ts";
import { faults } from "./faults.ts";
import { floor } from "./floor.ts";
import { floorBench } from "./floor-bench.ts";
import { floorMeasure } from "./floor-measure.ts";
import { floorRevision } from "./floor-revision.ts";
import { guide } from "./guide.ts";
import { harnesses } from "./harnesses.ts";
import { history } from "./history.ts";
import { imports } from "./imports.ts";
import { layout } from "./layout.ts";
import { lists } from "./lists.ts";
import { outside } from "./outside.ts";
import { panels } from "./panels.ts";
import { parts } from "./parts.ts";
import { people } from "./people.ts";
import { printPage } from "./print-page.ts";
import { prints } from "./prints.ts";
import { revisions } from "./revisions.ts";
import { revisionsApp } from "./revisions-app.ts";
import { runs } from "./runs.ts";
import { screws } from "./screws.ts";
import { service } from "./service.ts";
import { serviceBookApp } from "./service-book.ts";
import { serviceFaults } from "./service-faults.ts";
import { serviceProblems } from "./service-problems.ts";
import { serviceThing } from "./service-thing.ts";
import { session } from "./session.ts";
import { shell } from "./shell.ts";
import { start } from "./start.ts";
import { steps } from "./steps.ts";
import { tableNames } from "./table-names.ts";
import { tables } from "./tables.ts";
import { wiring } from "./wiring.ts";

/** All words of the app, by section. */
export const app = {
  checks,
  common,
  electric,
  faults,
  floor,
  floorBench,
  floorMeasure,
  floorRevision,
  guide,
  history,
  revisions,
  revisionsApp,
  compareApp,
  printPage,
  service,
  serviceBookApp,
  serviceFaults,
  serviceProblems,
  serviceThing,
  people,
  session,
  shell,
  start,
  bench,
  benchFloor,
  benchQuality,
  benchRecords,
  benchSheets,
  benchTrace,
  benchUnit,
  benchUnits,
  boards,
  outside,
  panels,
  parts,
  runs,
  harnesses,
  imports,
  layout,
  lists,
  prints,
  screws,
  steps,
  tableNames,
  tables,
  wiring,
};
