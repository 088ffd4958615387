import { NativeSelect, Table } from "@mantine/core";
import { ALL_TABLES, type MappedHeading } from "@pinwright/book";
import type { ForeignSheet } from "@pinwright/contract";
import { unitOf } from "../tables/logic/units.ts";
import { useWords } from "../words.tsx";

interface MappingTableProps {
  readonly table: string;
  readonly sheet: ForeignSheet;
  readonly mapping: readonly MappedHeading[];
  /** What was guessed, to say how it was found where the person left it. */
  readonly guessed: readonly MappedHeading[];
  readonly columns: readonly string[];
  readonly onColumns: (columns: readonly string[]) => void;
}

/** For each heading of a file the column of the table that its values go to. */
export function MappingTable(props: MappingTableProps) {
  const { table, sheet, mapping, guessed, columns, onColumns } = props;
  const words = useWords();
  const { rows: text } = words.imports;
  const titles: Readonly<Record<string, string>> = words.tableNames.columns;
  const schema = ALL_TABLES[table]?.columns ?? {};
  const choose = (at: number, column: string): void =>
    // A column is taken once: whoever had it before gives it up.
    onColumns(columns.map((own, i) => (i === at ? column : own === column ? "" : own)));
  return (
    <>
      <h4>{text.match}</h4>
      <p className="dim">{text.matchHint}</p>
      <div className="imports-faults">
        <Table withTableBorder verticalSpacing={4}>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>{text.heading}</Table.Th>
              <Table.Th>{text.example}</Table.Th>
              <Table.Th>{text.column}</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {sheet.header.map((heading, at) => {
              const column = columns[at] ?? "";
              const unit = mapping[at]?.unit ?? null;
              const guess = guessed[at];
              const how = guess !== undefined && guess.column === column ? guess.how : null;
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: headings keep their places, and may be the same
                <Table.Tr key={at}>
                  <Table.Td>{heading}</Table.Td>
                  <Table.Td className="imports-value dim">{examplesOf(sheet, at)}</Table.Td>
                  <Table.Td>
                    <NativeSelect
                      size="xs"
                      aria-label={`${text.column}: ${heading}`}
                      value={column}
                      onChange={(event) => choose(at, event.currentTarget.value)}
                    >
                      <option value="">{text.none}</option>
                      {Object.entries(schema).map(([name, { required }]) => (
                        <option key={name} value={name}>
                          {`${titles[name] ?? name} (${name})${required ? " *" : ""}`}
                        </option>
                      ))}
                    </NativeSelect>
                    <span className="dim imports-how">
                      {how === null ? "" : text.how[how]}
                      {unit === null ? "" : ` · ${text.converted(unit, unitOf(column))}`}
                    </span>
                  </Table.Td>
                </Table.Tr>
              );
            })}
          </Table.Tbody>
        </Table>
      </div>
    </>
  );
}

/** The first few different values under a heading. */
function examplesOf({ rows }: ForeignSheet, at: number): string {
  const found = new Set<string>();
  for (const row of rows) {
    const text = (row[at] ?? "").trim();
    if (text !== "") found.add(text);
    if (found.size === 3) break;
  }
  return [...found].join(" · ");
}
