import type { Fault } from "@pinwright/book";

/** `devices.csv, line 12, x_mm: "12 in" — expected a length in mm; did you mean 304.8?` */
export function faultText(fault: Fault): string {
  const where = [
    fault.file,
    fault.row === null ? null : `line ${fault.row}`,
    fault.column === null ? null : `column ${fault.column}`,
  ].filter((part) => part !== null);
  const found = fault.value === null ? "" : ` "${fault.value}"`;
  const nearest = fault.nearest === null ? "" : `; did you mean "${fault.nearest}"?`;
  return `${where.join(", ")}:${found} [${fault.code}] expected ${fault.expected}${nearest}`;
}
