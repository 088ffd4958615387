import { Button } from "@mantine/core";
import { ALL_TABLES } from "@pinwright/book";
import type { CellFault } from "../../worker/views/table-faults.ts";
import { useWords } from "../words.tsx";
import type { GridColumn } from "./grid/types.ts";

interface TableFootProps {
  readonly table: string;
  readonly column: GridColumn | undefined;
  readonly rowNumber: number | null;
  readonly faults: readonly CellFault[];
  readonly faultText: (fault: CellFault) => string;
  /** Cells of this column with the same text and the same fault. */
  readonly alike: number;
  readonly onMend: (fault: CellFault, everywhere: boolean) => void;
  readonly readOnly: boolean;
  readonly selected: { readonly rows: number; readonly cols: number };
  readonly sum: string;
  readonly shown: number;
  readonly all: number;
  readonly said: string;
}

/** The line below a table: what belongs in the active cell, what is wrong with it, and how to mend it. */
export function TableFoot(props: TableFootProps) {
  const words = useWords();
  const { foot } = words.tables;
  const { column, faults, selected } = props;
  return (
    <div className="table-foot">
      <div className="table-about">
        {faults.length > 0 ? (
          faults.map((fault) => (
            <div key={`${fault.column} ${fault.code} ${fault.expected}`} className="table-fault">
              <span className="error-text">
                {fault.column === null && <b>{foot.row}: </b>}
                {props.faultText(fault)}
              </span>
              {fault.nearest !== null && !props.readOnly && (
                <>
                  <Button size="compact-xs" variant="default" onClick={() => props.onMend(fault, false)}>
                    {foot.nearest(fault.nearest)}
                  </Button>
                  {props.alike > 1 && (
                    <Button size="compact-xs" variant="default" onClick={() => props.onMend(fault, true)}>
                      {foot.nearestEverywhere(fault.nearest, props.alike)}
                    </Button>
                  )}
                </>
              )}
            </div>
          ))
        ) : column === undefined ? null : (
          <span>
            <b>
              {column.title}
              {props.rowNumber === null ? "" : ` ${props.rowNumber}`}
            </b>{" "}
            <span className="dim">
              {column.about} {limitsOf(props.table, column.name, words)}
            </span>
          </span>
        )}
      </div>
      <div className="table-figures dim">
        {props.readOnly && <span>{foot.readOnly}</span>}
        {selected.rows * selected.cols > 1 && <span>{foot.selected(selected.rows, selected.cols)}</span>}
        {props.sum !== "" && <span>{foot.sum(props.sum)}</span>}
        <span>
          {props.shown === props.all ? words.tables.rows(props.all) : foot.shown(props.shown, props.all)}
        </span>
      </div>
      <div role="status" className="table-said">
        {props.said}
      </div>
    </div>
  );
}

/** What a column takes, as its schema says. */
function limitsOf(table: string, name: string, words: ReturnType<typeof useWords>): string {
  const column = ALL_TABLES[table]?.columns[name];
  if (column === undefined) return "";
  const { foot } = words.tables;
  const names: Readonly<Record<string, string>> = words.tableNames.tables;
  if (column.oneOf !== undefined) return foot.oneOf(column.oneOf.join(", "));
  if (column.table !== undefined) return foot.leads(names[column.table] ?? column.table);
  if (column.min !== undefined && column.max !== undefined)
    return foot.range(String(column.min), String(column.max));
  return "";
}
