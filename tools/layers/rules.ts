/** Which of our packages a package may import. Nothing imports upward. */
export const PACKAGE_MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  kernel: [],
  book: ["kernel"],
  engine: ["kernel", "book", "contract"],
  jobs: ["kernel", "book", "engine"],
  words: ["engine"],
  sheets: ["kernel", "book", "engine", "words"],
  cli: ["kernel", "book", "engine", "jobs", "words", "sheets"],
  contract: ["book"],
  store: ["book", "contract"],
  server: ["kernel", "book", "contract", "engine", "words", "sheets", "store"],
  web: ["kernel", "book", "contract", "engine", "words", "sheets"],
};

/** Entries that need Node, and the packages that may use them. */
export const NODE_ENTRIES: Readonly<Record<string, readonly string[]>> = {
  "@pinwright/book/io": ["cli", "server"],
  "@pinwright/sheets/print": ["cli", "server"],
};

/** Folders that may use Node's own modules and packages that need Node. */
export const NODE_FOLDERS: readonly string[] = [
  "packages/book/src/io/",
  "packages/sheets/src/print/",
  "packages/jobs/src/",
  "packages/cli/src/",
  "packages/store/src/",
  "packages/server/src/",
];

/** Packages from outside that only work in Node, or are too heavy for a browser. */
export const NODE_PACKAGES: readonly string[] = [
  "exceljs",
  "fontkit",
  "highs",
  "better-sqlite3",
  "pg",
  "kysely",
  "hono",
  "@hono/node-server",
  "@node-rs/argon2",
  "@peculiar/x509",
];

/** Chapters of the engine, each with the chapters whose index it may import. Only `line` sees all. */
export const CHAPTER_MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  model: [],
  bundle: ["model"],
  wire: ["model"],
  route: ["model", "wire", "bundle"],
  length: ["model", "bundle"],
  colour: ["model", "wire"],
  key: ["model", "wire", "length"],
  pinboard: ["model"],
  lists: ["model", "wire", "length"],
  electric: ["model", "wire", "bundle", "length"],
  fastening: ["model", "bundle"],
  steps: ["model", "fastening", "lists"],
  panels: ["model"],
  outside: ["model"],
  boards: ["model"],
  parts: ["model", "lists", "panels", "boards", "steps"],
  runs: ["model", "panels", "boards", "parts", "steps"],
  records: ["model", "lists", "boards"],
  service: ["model", "lists", "electric"],
  compare: ["model", "lists", "electric", "boards", "parts", "steps", "fastening", "panels"],
  line: [
    "model",
    "bundle",
    "wire",
    "route",
    "length",
    "colour",
    "key",
    "pinboard",
    "lists",
    "electric",
    "fastening",
    "steps",
    "panels",
    "boards",
    "parts",
    "outside",
  ],
};
