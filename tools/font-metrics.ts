/**
 * Writes `packages/sheets/src/compose/font-metrics.ts`: the advance widths of the shipped fonts, so that composing
 * a sheet needs no font file. Run with `npx tsx tools/font-metrics.ts` after a font package changes.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { measureFonts } from "../packages/sheets/src/print/measure-fonts.ts";

const target = fileURLToPath(new URL("../packages/sheets/src/compose/font-metrics.ts", import.meta.url));
writeFileSync(target, measureFonts());
