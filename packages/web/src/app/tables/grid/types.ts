import type { CellKind } from "@pinwright/book";
import type { CellFault } from "../../../worker/views/table-faults.ts";
import type { Arrangement, TableRow } from "../logic/arrange.ts";
import type { GridEdit } from "../logic/changes.ts";
import type { Selection } from "../logic/selection.ts";

/** A column as the grid shows it. */
export interface GridColumn {
  readonly name: string;
  readonly title: string;
  readonly unit: string;
  /** What belongs in it, for the tooltip and the line below the grid. */
  readonly about: string;
  readonly kind: CellKind;
  readonly required: boolean;
  readonly isKey: boolean;
  /** The words of a choice. */
  readonly choices: readonly string[] | null;
}

/** A value that a look-up offers. */
export interface Offer {
  readonly value: string;
  readonly label: string;
}

/** What the keyboard and the buttons can ask for beside editing cells. */
export interface GridCommands {
  readonly undo: () => void;
  readonly redo: () => void;
  readonly insertRows: () => void;
  readonly deleteRows: () => void;
  readonly moveRows: (by: -1 | 1) => void;
  /** The keyboard leaves the grid. */
  readonly leave: () => void;
}

export interface GridProps {
  readonly label: string;
  readonly columns: readonly GridColumn[];
  /** Rows in the order in which they are shown. */
  readonly rows: readonly TableRow[];
  /** Number of a row as a spreadsheet counts it, the heading being 1. */
  readonly numberOf: (id: string) => number;
  readonly faults: ReadonlyMap<string, readonly CellFault[]>;
  /** Shown in a faulty cell's tooltip. */
  readonly faultText: (fault: CellFault) => string;
  readonly readOnly: boolean;
  /** No row can be added. */
  readonly fixedRows?: boolean;
  readonly widths: Readonly<Record<string, number>>;
  readonly onWidth: (column: string, px: number | null) => void;
  readonly arrangement: Arrangement;
  readonly onArrange: (arrangement: Arrangement) => void;
  readonly showFilters: boolean;
  readonly selection: Selection;
  readonly onSelect: (selection: Selection) => void;
  readonly onEdit: (edit: GridEdit) => void;
  readonly offers: (column: string, row: TableRow | null, text: string) => Promise<readonly Offer[]>;
  readonly commands: GridCommands;
  /** Tells of something that could not be done. */
  readonly say: (text: string) => void;
}

/** What a toolbar can do to a grid. */
export interface GridHandle {
  /** Brings a cell into sight. */
  readonly reveal: (row: number, col: number) => void;
  readonly focus: () => void;
  readonly edit: () => void;
  readonly copy: () => void;
  readonly cut: () => void;
  readonly paste: () => void;
  readonly fillDown: () => void;
  readonly clear: () => void;
}
