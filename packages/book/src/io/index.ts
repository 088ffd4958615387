export { readBook } from "./read-book.ts";
export { type BookFormat, writeBook } from "./write-book.ts";
export { NotABook } from "./write-folder.ts";
