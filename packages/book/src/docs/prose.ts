import { FLATTEN_MM } from "../outline/flatten.ts";
import { JOIN_MM } from "../outline/rings.ts";

/** Opening of the documentation. */
export const BOOK_INTRO = (bookTables: number, shopTables: number): string[] => [
  "# The book",
  "",
  "This file is generated from the schema by `npx tsx tools/book-docs.ts`. Do not edit it: change `packages/book/src/schema` and run the tool again.",
  "",
  "A book defines one machine. It is a folder:",
  "",
  "```",
  "machine.json       what the book is",
  `<table>.csv        one file a table; ${bookTables} tables, a table without rows needs no file`,
  "outlines/          outline drawings, .dxf or .svg",
  "drawings/          files that parts are made from: .pdf, .dxf, .svg, .step, .stp",
  `shop/<table>.csv   the shop's ${shopTables} tables, if this machine has a shop of its own`,
  "```",
  "",
  "Other files and folders may lie there; they are not read and not removed. A `.csv` file that is not one of the tables is a fault.",
];

export const FRAMES_TEXT: readonly string[] = [
  "## Frames",
  "",
  "Lengths are in mm, angles in degrees anticlockwise, times in ms or minutes: the end of a column's name says so.",
  "",
  "- A **panel** has one frame for both of its sides: origin at the corner nearest the player's left hand (or the lower left as drawn), x to the right, y away from the player, seen from `top`. `under` is the same frame seen from below, so that a drawing of it is mirrored in x.",
  "- A **device** and a **mechanism** are placed by the origin of their own frame and a rotation seen from `top`. Without an outline they are a rectangle about that origin.",
  "- A **board** is placed by its lower left corner.",
  "- The devices and fasteners of a mechanism type are given in the mechanism's frame and move with it.",
  "- In a pose, a panel's frame is placed in the room: x right, y away from the player, z up; turned about the room's x, then y, then z axis.",
];

export const POINTS_TEXT: readonly string[] = [
  "## Ids, items and points",
  "",
  "An id is stable and names its row in every other table. The ids of devices, boards, mechanisms, fasteners and in-line connectors are unique among all of them, because each of these is an **item**. A device or fastener that comes with a mechanism is the item `mechanism/child`.",
  "",
  "A **point** is one electrical contact of an item:",
  "",
  "```",
  'point      = item ":" ( connector "." pin | terminal )',
  'item       = id | mechanism-id "/" child',
  "connector  = name of a connector of the item's board type or device type; of an in-line connector: a or b",
  "pin        = number of the cavity, 1 to the ways of the connector",
  "terminal   = terminal of the item's device type",
  "```",
  "",
  "`brd.main:j1.5`, `sw.lane-left:no`, `flip.left/coil:a` and `inl.playfield:a.12` are points.",
  "",
  "A row of `renames` keeps an old id alive: a reference to it leads to the new one and is written as the new one.",
  "",
  "The column `options` says for which options a row holds; a blank cell means always.",
];

export const CSV_TEXT: readonly string[] = [
  "## CSV",
  "",
  "Read: UTF-8, with or without a byte-order mark; lines end in LF, CRLF or CR; cells are separated by comma, semicolon or tab, whichever the heading line uses most; cells may stand in double quotes, and must if they hold the separator, a line break or a quote, which is then doubled. Columns may stand in any order; one that need not be filled may be left out. Empty rows are passed over. Spaces around a value count in texts only.",
  "",
  "Written (canonical): UTF-8 without byte-order mark, LF, comma, columns in the order below, rows in their order, quotes only where they must be, a line end after the last row; numbers in shortest plain decimal; a value that a blank cell means anyway as a blank cell. Canonical CSV that is read and written gives the same bytes.",
  "",
  "A text that a spreadsheet could run as a formula, because it starts with `=`, `+`, `-`, `@`, a tab or a carriage return, is written with an apostrophe before it; one that has apostrophes before such a character gets one more. Reading takes that apostrophe away. Numbers in number columns are never escaped.",
];

export const OTHER_FORMS_TEXT: readonly string[] = [
  "## ZIP and XLSX",
  "",
  "A `.zip` holds the same files as the folder, at its top or in one folder. The same book gives the same bytes.",
  "",
  "An `.xlsx` does not hold the files of the folder `drawings`: send a `.zip` when they have to come along.",
  "",
  "An `.xlsx` has one worksheet a table, with the headings of this page in the first row; a worksheet `machine` with a row `key`, `value` for each key of `machine.json` (languages separated by one space); and a worksheet `outlines` with the text of the drawings in rows `file`, `part`, `text`, where a backslash is `\\\\` and a carriage return or another control character `\\u000d`. Text cells are stored as text, so that nothing in them runs as a formula or turns into a number or a date. Of a cell with a formula the last result is read; a date is read as year-month-day.",
];

export const OUTLINE_TEXT: readonly string[] = [
  "## Outlines",
  "",
  `An outline is one or more closed rings; a ring within another is a hole. Curves are flattened to within ${FLATTEN_MM} mm. Loose lines and arcs whose ends are within ${JOIN_MM} mm of each other are joined. A line that does not close to a ring is a fault, and so is everything that is not read.`,
  "",
  "- **DXF**, as text, in UTF-8: LINE, LWPOLYLINE, POLYLINE, ARC, CIRCLE, ELLIPSE, SPLINE and blocks. `$INSUNITS` is honoured; without it a unit is 1 mm. The origin of the drawing is the origin of the frame. Text, dimensions, points and the paper space are passed over; other entities, such as HATCH, are faults.",
  "- **SVG**: path, rect, circle, ellipse, polygon, polyline, line, groups and transforms. The size comes from `width`, `height` and `viewBox`; with a `viewBox` alone, one unit is 1 mm; `px` are 1/96 inch. y is turned to point up. The drawing's own (0, 0) is the origin of the frame, unless the `viewBox` starts there or is absent: then the lower left corner of the page is.",
];

export const DRAWING_TEXT: readonly string[] = [
  "## Drawings",
  "",
  "The files of the folder `drawings` are kept byte by byte. The table `drawings` says which part and revision each belongs to, and the SHA-256 that its bytes had when that was said; a file whose bytes are others is a finding. A revision has files of its own, under other names: the file of an earlier revision stays as it is.",
  "",
  "A name has letters a to z, digits, dots and hyphens and ends in `.pdf`, `.dxf`, `.svg`, `.step` or `.stp`. A file must begin as its ending says: `%PDF-` (ISO 32000-1), a section of a DXF as text, the root `svg`, `ISO-10303-21;` (ISO 10303-21). What does not is a fault and is not read.",
];

export const READING_TEXT: readonly string[] = [
  "## Faults",
  "",
  "Reading a book tells all of its faults at once, each with file, row, column, the value as found, what was expected and, when there is one worth offering, the nearest valid value. Rows are counted as a spreadsheet does: the heading is row 1.",
  "",
  "A book with faults still opens. A faulty cell reads as the blank of its column; a row whose key is faulty is not read; a reference that leads nowhere reads as blank. When a file cannot be read at all, references into it are not judged.",
];
