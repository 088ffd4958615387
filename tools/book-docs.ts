/** Writes `docs/book.md` from the schema: `npx tsx tools/book-docs.ts`. */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { bookDocs } from "@pinwright/book";

writeFileSync(fileURLToPath(new URL("../docs/book.md", import.meta.url)), bookDocs());
