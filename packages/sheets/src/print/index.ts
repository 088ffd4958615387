export { gridCsv } from "./csv.ts";
export { formatsOf, renderDocument, SHEET_FORMATS, type SheetFormat } from "./render.ts";
export { CONTENTS_FILE, ORDER_FILE, sendOutFiles } from "./send-out.ts";
