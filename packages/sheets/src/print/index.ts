export { gridCsv } from "./csv.ts";
export { formatsOf, renderDocument, SHEET_FORMATS, type SheetFormat } from "./render.ts";
