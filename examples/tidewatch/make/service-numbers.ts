import type { BookRow, BookTables } from "@pinwright/book";

/** Classes that are numbered together: a switch is one however it senses, and coils and motors share their maps. */
const TOGETHER: Readonly<Record<string, string>> = {
  switch: "switch",
  button: "switch",
  sensor: "switch",
  lamp: "lamp",
  coil: "coil",
  motor: "coil",
  speaker: "speaker",
};

/** Numbers for all that the display and a letter name by number and that has none yet, after those that are taken. */
export function withServiceNumbers(tables: BookTables): BookTables {
  const classOf = new Map(tables.device_types.map((row) => [row.id, row.class]));
  const sequenceOf = (type: string): string | undefined => TOGETHER[classOf.get(type) ?? ""];
  const last = new Map<string, number>();
  for (const { type, number } of tables.devices) {
    const sequence = sequenceOf(type);
    if (sequence !== undefined && number !== null)
      last.set(sequence, Math.max(last.get(sequence) ?? 0, number));
  }
  const next = (sequence: string): number => {
    const number = (last.get(sequence) ?? 0) + 1;
    last.set(sequence, number);
    return number;
  };
  const devices = tables.devices.map((row) => {
    const sequence = sequenceOf(row.type);
    return row.number !== null || sequence === undefined ? row : { ...row, number: next(sequence) };
  });
  const mechanism_numbers = tables.mechanisms.flatMap((mechanism) =>
    tables.mechanism_devices.flatMap((child): BookRow<"mechanism_numbers">[] => {
      const sequence = child.mechanism_type === mechanism.type ? sequenceOf(child.device_type) : undefined;
      return sequence === undefined
        ? []
        : [{ item: `${mechanism.id}/${child.child}`, number: next(sequence) }];
    }),
  );
  return { ...tables, devices, mechanism_numbers };
}
