import type {
  Machine,
  PlacedElement,
  ServiceFault,
  ServiceNetwork,
  SizedWire,
} from "../../packages/engine/src/index.ts";

export type Wires = readonly Pick<SizedWire, "id" | "a" | "b" | "wireType" | "finishedMm">[];

/** A machine as it is built with something wrong: other elements, other wires. */
export interface Built {
  readonly elements: readonly PlacedElement[];
  readonly wires: Wires;
  /** Items that do nothing although they are fed. */
  readonly dead: ReadonlySet<string>;
}

const LINK_OHM = 0.02;

/** An element that the book does not have: a probe, a pull-up, two wires that touch. */
export function extraElement(
  like: PlacedElement,
  id: string,
  kind: PlacedElement["row"]["kind"],
  fromPointId: string,
  toPointId: string,
  values: Partial<PlacedElement["row"]>,
): PlacedElement {
  return { id, itemId: like.itemId, fromPointId, toPointId, row: { ...like.row, id, kind, ...values } };
}

/** A machine with one more fault put into its elements and wires. */
export function withFault(built: Built, network: ServiceNetwork, fault: ServiceFault): Built {
  const { elements, wires, dead } = built;
  const joint = "joint" in fault ? network.joints[fault.joint] : undefined;
  const swap = (p: string, q: string): Wires => {
    const to = (end: string): string => (end === p ? q : end === q ? p : end);
    return wires.map((wire) => ({ ...wire, a: to(wire.a), b: to(wire.b) }));
  };
  const without = (id: string): readonly PlacedElement[] => elements.filter((one) => one.id !== id);
  const linked = (id: string): readonly PlacedElement[] =>
    elements.map((one) =>
      one.id === id ? { ...one, row: { ...one.row, kind: "link", ohm: LINK_OHM } } : one,
    );
  switch (fault.kind) {
    case "open":
      // A broken wire leaves a stub at either end.
      if (joint?.kind === "wire")
        return {
          elements,
          dead,
          wires: wires.flatMap((wire) =>
            wire.id === joint.id
              ? [
                  { ...wire, b: `${wire.id} broken` },
                  { ...wire, a: `${wire.id} broken off` },
                ]
              : [wire],
          ),
        };
      // A contact that is out still holds together the wires that are crimped in it.
      if (joint?.kind === "contact") return { elements, dead, wires: swap(joint.id, `${joint.id} out`) };
      return { elements: without(joint?.id ?? ""), wires, dead };
    case "closed":
      return { elements: linked(joint?.id ?? ""), wires, dead };
    case "mechanical":
      if (joint?.element?.row.kind !== "contact") return built;
      return { elements: fault.stuck ? linked(joint.id) : without(joint.id), wires, dead };
    case "short": {
      const [p = "", q = ""] = [network.nodes[fault.a], network.nodes[fault.b]];
      const [like] = elements;
      if (like === undefined) return built;
      const short = extraElement(like, `short ${p} ${q}`, "link", p, q, { ohm: LINK_OHM });
      return { elements: [...elements, short], wires, dead };
    }
    case "swapped": {
      const [p, q] = [network.joints[fault.a]?.id ?? "", network.joints[fault.b]?.id ?? ""];
      return { elements, dead, wires: swap(p, q) };
    }
    case "dead":
      return {
        elements: elements.filter(({ itemId, row }) => itemId !== fault.itemId || row.kind !== "source"),
        wires,
        dead: new Set([...dead, fault.itemId]),
      };
  }
}

/** Where a probe touches what a node is called in the sound machine: whoever holds it goes by the wire's number and colour. */
export function probed(network: ServiceNetwork, faults: readonly ServiceFault[], node: string): string {
  let at = node;
  for (const fault of faults) {
    const name = (n: number): string => network.joints[n]?.id ?? "";
    if (fault.kind === "open" && network.joints[fault.joint]?.kind === "contact")
      at = at === `wire:${name(fault.joint)}` ? `${name(fault.joint)} out` : at;
    else if (fault.kind === "swapped") {
      const [p, q] = [`wire:${name(fault.a)}`, `wire:${name(fault.b)}`];
      at = at === p ? q : at === q ? p : at;
    }
  }
  return at;
}

/** Whether anything on a net of class data is another than in the sound machine. */
export function touchesData(machine: Machine, sound: Built, built: Built): boolean {
  const data = new Set(
    machine.ends.flatMap(({ point, net }) => (machine.nets.get(net)?.class === "data" ? [point] : [])),
  );
  const key = ({ id, a, b }: Wires[number]): string => `${id} ${a} ${b}`;
  const was = new Set(sound.wires.map(key));
  const is = new Set(built.wires.map(key));
  const wires = [
    ...sound.wires.filter((wire) => !is.has(key(wire))),
    ...built.wires.filter((wire) => !was.has(key(wire))),
  ];
  const [before, after] = [new Set(sound.elements), new Set(built.elements)];
  const elements = [
    ...sound.elements.filter((one) => !after.has(one)),
    ...built.elements.filter((one) => !before.has(one)),
  ];
  return (
    wires.some(({ a, b }) => data.has(a) || data.has(b)) ||
    elements.some(({ fromPointId: a, toPointId: b }) => data.has(a) || data.has(b))
  );
}
