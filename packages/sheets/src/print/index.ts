export { formatsOf, renderDocument, SHEET_FORMATS, type SheetFormat } from "./render.ts";
