/** For tests of a chapter that need what the whole line makes of a book. */
export { Line } from "../line/index.ts";
