export {
  DELIMITERS,
  type Delimiter,
  detectDelimiter,
  detectForeignDelimiter,
  type ForeignDelimiter,
} from "./delimiter.ts";
export {
  type BookFiles,
  drawingFiles,
  filesOf,
  type RawFiles,
  type ReadFiles,
  rawFiles,
  readBookFiles,
  readRaw,
  textFiles,
  writeBookFiles,
} from "./files.ts";
export { escapeFormula, unescapeFormula } from "./formula.ts";
export { CsvGuard } from "./guard.ts";
export { type ParsedCsv, parseCsv, parseGuardedCsv } from "./parse.ts";
export { type BookPath, bookPath, DRAWING_FOLDER, OUTLINE_FOLDER, SHOP_FOLDER } from "./paths.ts";
export { writeCsv, writeRawCsv } from "./write.ts";
