import type { Model } from "../model.ts";

/** An id with what people call it; labels are blank where there are none. */
export interface NamedId {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
}

const blank = (id: string): NamedId => ({ id, label: "", labelZh: "" });

export function namedItem({ line }: Model, id: string): NamedId {
  const labels = line.machine.items.get(id)?.labels;
  return labels === undefined ? blank(id) : { id, label: labels.en, labelZh: labels.zh };
}

/** A tool of the shop; anything else is the drive that the tool must fit. */
export function namedTool({ shop }: Model, id: string): NamedId {
  const tool = shop.tables.drivers.find((row) => row.id === id);
  return tool === undefined ? blank(id) : { id, label: tool.label, labelZh: tool.label_zh };
}

export const namedType = (row: {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
}): NamedId => ({ id: row.id, label: row.label, labelZh: row.label_zh });
