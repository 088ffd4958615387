import { Button, Table } from "@mantine/core";
import type { Fault } from "@pinwright/book";
import type { ImportResult } from "@pinwright/contract";
import { useState } from "react";
import { useWords } from "../words.tsx";

type FaultOfFile = ImportResult["faults"][number];

const FIRST = 50;

/** Faults of a file, each with its place. */
export function FaultList({ faults }: { readonly faults: readonly FaultOfFile[] }) {
  const words = useWords();
  const { book: text } = words.imports;
  const [all, setAll] = useState(false);
  const names: Readonly<Record<string, string>> = words.faults;
  const told = (fault: Pick<Fault, "expected"> & { readonly code: string }): string => {
    const more = words.tables.fault(fault.code, fault.expected);
    const name = names[fault.code] ?? fault.code;
    return more === "" ? `${name}.` : `${name}: ${more}`;
  };
  const shown = all ? faults : faults.slice(0, FIRST);
  return (
    <div className="imports-faults">
      <Table striped={false} withTableBorder verticalSpacing={4}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th>{text.file}</Table.Th>
            <Table.Th>{text.row}</Table.Th>
            <Table.Th>{text.column}</Table.Th>
            <Table.Th>{text.found}</Table.Th>
            <Table.Th>{text.wrong}</Table.Th>
            <Table.Th>{text.nearest}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {shown.map((fault, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list never changes, and two faults may say the same
            <Table.Tr key={i}>
              <Table.Td>{fault.file}</Table.Td>
              <Table.Td>{fault.row ?? ""}</Table.Td>
              <Table.Td>{fault.column ?? ""}</Table.Td>
              <Table.Td className="imports-value">{fault.value ?? ""}</Table.Td>
              <Table.Td>{told(fault)}</Table.Td>
              <Table.Td className="imports-value">{fault.nearest ?? ""}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
      {shown.length < faults.length && (
        <Button variant="subtle" size="compact-sm" onClick={() => setAll(true)}>
          {text.more(faults.length - shown.length)}
        </Button>
      )}
    </div>
  );
}
