import { NativeSelect } from "@mantine/core";
import { ALL_TABLES, chosenMapping, guessMapping, type MappedHeading, mappedRows } from "@pinwright/book";
import type { ForeignSheet, Mapping } from "@pinwright/contract";
import { useEffect, useMemo, useState } from "react";
import { call } from "../../api/call.ts";
import { FaultTable } from "../start/fault-table.tsx";
import { GROUPS } from "../tables/table-list.tsx";
import { useWords } from "../words.tsx";
import { guessTable } from "./logic/guess-table.ts";
import { MappingTable } from "./mapping-table.tsx";
import { RowsPreview } from "./rows-preview.tsx";

interface RowsImportProps {
  readonly fileName: string;
  readonly sheets: readonly ForeignSheet[];
}

/** Rows of a spreadsheet with headings of its own, on their way into a table. */
export function RowsImport({ fileName, sheets }: RowsImportProps) {
  const words = useWords().imports;
  const [mappings, setMappings] = useState<readonly Mapping[] | null>(null);
  const [at, setAt] = useState(() =>
    Math.max(
      0,
      sheets.findIndex((sheet) => sheet.rows.length > 0),
    ),
  );
  useEffect(() => {
    void call("mappings", { parts: {} }).then(setMappings, () => setMappings([]));
  }, []);
  const sheet = sheets[at];
  if (sheet === undefined) return <p className="error-text">{words.bring.unreadable}</p>;
  if (mappings === null) return <p className="dim">{words.bring.reading}</p>;
  return (
    <>
      {sheets.length > 1 && (
        <NativeSelect
          className="imports-select"
          label={words.rows.sheet}
          value={String(at)}
          onChange={(event) => setAt(Number(event.currentTarget.value))}
          data={sheets.map((one, i) => ({
            value: String(i),
            label: words.rows.sheetRows(one.name, one.rows.length),
          }))}
        />
      )}
      <SheetImport key={at} fileName={fileName} sheet={sheet} mappings={mappings} />
    </>
  );
}

/** One sheet: which table, which columns, and the preview. */
function SheetImport({
  fileName,
  sheet,
  mappings,
}: {
  readonly fileName: string;
  readonly sheet: ForeignSheet;
  readonly mappings: readonly Mapping[];
}) {
  const words = useWords();
  const { rows: text } = words.imports;
  const names: Readonly<Record<string, string>> = words.tableNames.tables;
  const [table, setTable] = useState(() => guessTable(`${fileName} ${sheet.name}`, sheet.header, mappings));
  const guessed = useMemo(() => guessFor(sheet.header, table, mappings), [sheet, table, mappings]);
  const [chosen, setChosen] = useState<readonly string[] | null>(null);
  const columns = useMemo(() => chosen ?? guessed.map(({ column }) => column ?? ""), [chosen, guessed]);
  const schema = ALL_TABLES[table];
  const mapping = useMemo(
    () => (schema === undefined ? [] : chosenMapping(sheet.header, columns, schema)),
    [sheet, columns, schema],
  );
  const mapped = useMemo(
    () => (schema === undefined ? null : mappedRows(sheet.rows, mapping, schema)),
    [sheet, mapping, schema],
  );
  const titles: Readonly<Record<string, string>> = words.tableNames.columns;
  if (schema === undefined || mapped === null) return null;
  return (
    <>
      {sheet.faults.length > 0 && (
        <>
          <p className="amber-text">{text.unread(sheet.faults.length)}</p>
          <FaultTable faults={sheet.faults} />
        </>
      )}
      <NativeSelect
        className="imports-select"
        label={text.table}
        value={table}
        onChange={(event) => {
          setTable(event.currentTarget.value);
          setChosen(null);
        }}
      >
        {GROUPS.map((group) => (
          <optgroup key={group} label={words.tables.groups[group]}>
            {Object.values(ALL_TABLES)
              .filter((one) => one.group === group)
              .map(({ name }) => (
                <option key={name} value={name}>
                  {names[name] ?? name}
                </option>
              ))}
          </optgroup>
        ))}
      </NativeSelect>
      {sheet.rows.length === 0 ? (
        <p className="dim">{text.noRows}</p>
      ) : (
        <>
          <MappingTable
            table={table}
            sheet={sheet}
            mapping={mapping}
            guessed={guessed}
            columns={columns}
            onColumns={setChosen}
          />
          {mapped.missing.length > 0 && (
            <p className="amber-text">
              {text.missing(mapped.missing.map((name) => titles[name] ?? name).join(", "))}
            </p>
          )}
          <RowsPreview
            key={`${table} ${columns.join(" ")}`}
            table={table}
            fileName={fileName}
            sheet={sheet}
            columns={columns}
            mapped={mapped}
          />
        </>
      )}
    </>
  );
}

const guessFor = (
  header: readonly string[],
  table: string,
  mappings: readonly Mapping[],
): readonly MappedHeading[] => {
  const schema = ALL_TABLES[table];
  return schema === undefined ? [] : guessMapping(header, schema, mappings);
};
