export { type ReadRawFiles, readBook, readRawFiles } from "./read-book.ts";
export { type ForeignFile, type ForeignTable, readForeignSheet } from "./read-foreign.ts";
export { readShop } from "./read-shop.ts";
export { type BookFormat, formatOf, writeBook } from "./write-book.ts";
export { writeCells } from "./write-cells.ts";
export { NotABook } from "./write-folder.ts";
export { packXlsx } from "./write-xlsx.ts";
export { packZip } from "./write-zip.ts";
