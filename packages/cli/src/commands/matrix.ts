import type { Book } from "@pinwright/book";
import {
  ghostsOf,
  type MatrixProposal,
  missingDiodes,
  proposeMatrix,
  resolveMachine,
  type SwitchMatrix,
  switchMatrices,
  withProposal,
} from "@pinwright/engine";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, saveBook } from "../load.ts";
import { STATUS, UsageError } from "../terminal.ts";

const metres = (mm: number): string => `${(mm / 1000).toFixed(2)} m`;

function matrixText(matrix: SwitchMatrix): string {
  const lines = missingDiodes(matrix).map(
    ({ crossing, ghost, closed }) =>
      `  no diode at ${crossing.itemId}: ${closed.map((c) => c.itemId).join(", ")} closed make ${ghost.itemId} read closed\n`,
  );
  return `${matrix.id}: ${matrix.columns.length} columns × ${matrix.rows.length} rows, ${matrix.crossings.length} switches\n${lines.join("")}`;
}

/** What reads closed beside what is closed: `column row: switch`. */
function closedText(matrix: SwitchMatrix, closed: readonly string[]): string {
  const ids = new Set(matrix.crossings.flatMap(({ id, itemId }) => (closed.includes(itemId) ? [id] : [])));
  const ghosts = ghostsOf(matrix, ids).map(({ column, row }) => {
    const at = matrix.crossings.filter((c) => c.column === column && c.row === row).map((c) => c.itemId);
    return `  ${matrix.columns[column]?.id} ${matrix.rows[row]?.id}: ${at.join(", ") || "no switch"}\n`;
  });
  return `${matrix.id}: ${ids.size} closed, ${ghosts.length} more read closed\n${ghosts.join("")}`;
}

function proposalText(proposal: MatrixProposal): string {
  const { nowMm, mm, moves, changes, pinned, ghosts } = proposal;
  const now = Number.isFinite(nowMm) ? metres(nowMm) : "not as the harnesses allow";
  const moved = moves.map(
    ({ itemId, number, from, to }) =>
      `  ${itemId}${number === null ? "" : ` (${number})`}: ${from.column} ${from.row} → ${to.column} ${to.row}\n`,
  );
  return [
    `  wire of its lines ${now} → ${metres(mm.value)}; nothing is below ${metres(mm.lowerBound)} (${(100 * mm.gap).toFixed(1)} %)\n`,
    `  ${moves.length} switches move, ${changes.length} ends change, ${pinned} are pinned; missing diodes ${ghosts[0]} → ${ghosts[1]}\n`,
    ...moved,
  ].join("");
}

/** Shows the switch matrices of a book, and a cheaper assignment of switches to columns and rows; takes it on demand. */
export const matrixCommand: Command = {
  name: "matrix",
  operands: "BOOK",
  about: "show switch matrices, their ghosts, and which crossings would need the least wire",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    matrix: { type: "string", value: "ID", about: "only this matrix; else all" },
    closed: {
      type: "string",
      multiple: true,
      value: "ID",
      about: "with these switches closed, tell which open ones read closed; several with commas",
    },
    json: { type: "boolean", about: "write the proposals as JSON" },
    write: { type: "boolean", about: "take the proposals: write the nets of the ends into the book" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    if (fatalFaults(loaded.faults).length > 0 || (call.flag("write") && loaded.faults.length > 0)) {
      for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
      if (call.flag("write"))
        terminal.err(
          "The book has faults, and writing it would lose those cells: mend them first. Nothing was written.\n",
        );
      return STATUS.failed;
    }
    const machine = resolveMachine(loaded.book, loaded.shop, loaded.options);
    const all = switchMatrices(machine);
    const only = call.text("matrix");
    const matrices = all.filter(({ id }) => only === undefined || id === only);
    if (only !== undefined && matrices.length === 0)
      throw new UsageError(`--matrix ${only}: the book has ${all.map(({ id }) => id).join(", ") || "none"}`);
    const closed = call.texts("closed");
    if (closed.length > 0) {
      const items = new Set(all.flatMap(({ crossings }) => crossings.map(({ itemId }) => itemId)));
      const unknown = closed.find((id) => !items.has(id));
      if (unknown !== undefined)
        throw new UsageError(`--closed ${unknown}: no switch of a matrix has this id`);
      for (const matrix of matrices) terminal.out(closedText(matrix, closed));
      return STATUS.good;
    }
    const proposals: MatrixProposal[] = [];
    let book: Book = loaded.book;
    let isPossible = true;
    for (const matrix of matrices) {
      const proposal = proposeMatrix(machine, matrix);
      if (!call.flag("json")) terminal.out(matrixText(matrix));
      if (proposal === null) {
        isPossible = false;
        terminal.err(`${matrix.id}: what is pinned leaves no assignment\n`);
        continue;
      }
      if (!call.flag("json")) terminal.out(proposalText(proposal));
      proposals.push(proposal);
      book = withProposal(book, proposal);
    }
    if (call.flag("json")) terminal.out(`${JSON.stringify(proposals, null, 2)}\n`);
    else if (matrices.length === 0) terminal.out("The book has no switch matrix.\n");
    if (call.flag("write") && book !== loaded.book) {
      await saveBook(loaded, book);
      terminal.err(`${loaded.path}: taken.\n`);
    } else if (matrices.length > 0) terminal.err("Nothing was written; --write takes this into the book.\n");
    return isPossible ? STATUS.good : STATUS.found;
  },
};
