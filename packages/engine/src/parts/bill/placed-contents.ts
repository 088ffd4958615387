import type { BookRow } from "@pinwright/book";
import { type Item, labelsOf, type Machine } from "../../model/index.ts";
import { type Contents, ContentsBuilder, ONE } from "./contents.ts";
import { machineNode, nodeOf, unnamedNode } from "./nodes.ts";
import { boardNode, mechanismNode, type PartIndex } from "./part-index.ts";

type FastenerType = BookRow<"fastener_types">;

/**
 * Everything that is placed in the machine by itself: devices, boards, mechanisms, and all fasteners with their
 * washers and nuts; those that hold a mechanism are driven when it is mounted. What is in a mechanism comes with it,
 * and the halves of in-line connectors come with their harnesses.
 */
export function placedContents(machine: Machine, index: PartIndex): Contents {
  const contents = new ContentsBuilder(machineNode(machine));
  for (const item of machine.items.values()) addItem(contents, index, item);
  return contents.build();
}

function addItem(contents: ContentsBuilder, index: PartIndex, item: Item): void {
  const { id: at } = item;
  switch (item.kind) {
    case "device":
      if (item.parentId !== null) return;
      contents.add({ child: deviceNode(index, item.type), why: "device", quantity: ONE, at });
      return;
    case "board":
      contents.add({ child: boardNode(item.type), why: "board", quantity: ONE, at });
      return;
    case "mechanism":
      contents.add({ child: mechanismNode(item.type), why: "mechanism", quantity: ONE, at });
      return;
    case "fastener": {
      const of = (type: FastenerType | null, why: "fastener" | "washer" | "nut"): void => {
        if (type !== null) contents.add({ child: fastenerNode(index, type), why, quantity: ONE, at });
      };
      of(item.type, "fastener");
      of(item.washer, "washer");
      of(item.nut, "nut");
      return;
    }
    case "inline":
      return;
  }
}

export const deviceNode = (index: PartIndex, type: BookRow<"device_types">) =>
  nodeOf(index, type.part, () => unnamedNode("device", type.id, labelsOf(type, type.id)));

const fastenerNode = (index: PartIndex, type: FastenerType) =>
  nodeOf(index, type.part, () => unnamedNode("fastener", type.id, labelsOf(type, type.id)));

/** Whatever decides what is placed, wherever it is placed: equal lists give equal contents. */
export function placedInputs(machine: Machine): readonly unknown[] {
  const inputs: unknown[] = [];
  for (const item of machine.items.values()) {
    if (item.kind === "inline") continue;
    inputs.push(item.id, item.type);
    if (item.kind === "fastener") inputs.push(item.washer, item.nut);
  }
  return inputs;
}
