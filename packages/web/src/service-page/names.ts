import { type FaultFile, type FileFunction, type FileLabels, fileJointId, pointOf } from "@pinwright/engine";
import type { Language } from "@pinwright/words";
import type { FaultWords } from "@pinwright/words/service";

export const GROUPS = ["lamp", "switch", "coil", "motor", "speaker"] as const;
export type Group = (typeof GROUPS)[number];

/** Where a probe is held, or what is looked at. */
export interface Spot {
  readonly text: string;
  /** Indices; -1: there is none, as at a splice. */
  readonly item: number;
  readonly landing: number;
  readonly pin: number | null;
}

/** Function with all that a list of them shows. */
export interface NamedFunction {
  readonly f: number;
  readonly id: string;
  readonly group: Group;
  /** Index of its item. */
  readonly item: number;
  readonly number: number | null;
  readonly name: string;
}

/** Names of all that a fault file is about, in one language. */
export class Names {
  readonly functions: readonly NamedFunction[];
  readonly #file: FaultFile;
  readonly #words: FaultWords["faults"];
  readonly #colours: Readonly<Record<string, string>>;
  readonly #at: 0 | 1;
  readonly #pointOf: ReadonlyMap<string, number>;
  readonly #jointOf: ReadonlyMap<string, number>;
  /** Wires that end on each node. */
  readonly #wiresAt = new Map<number, number[]>();

  constructor(file: FaultFile, { faults, colours }: FaultWords, language: Language) {
    this.#file = file;
    this.#words = faults;
    this.#colours = colours;
    this.#at = language === "zh" ? 1 : 0;
    this.#pointOf = new Map(file.points.map(({ id }, n) => [id, n]));
    this.#jointOf = new Map(file.joints.map((_, n) => [fileJointId(file, n), n]));
    for (const [kind, a, b, wire] of file.joints)
      if (kind === "w")
        for (const node of [a, b]) this.#wiresAt.set(node, [...(this.#wiresAt.get(node) ?? []), wire]);
    this.functions = file.functions.map((one, f) => this.#function(one, f));
  }

  pick(labels: FileLabels | undefined): string {
    return labels?.[this.#at] || labels?.[0] || "";
  }

  item(n: number): string {
    const item = this.#file.items[n];
    return item === undefined
      ? ""
      : item.number === null
        ? this.pick(item.labels)
        : `${item.number} ${this.pick(item.labels)}`;
  }

  /** Kind, number and name: `lamp 12 Left lane`. */
  functionName(f: number): string {
    const one = this.functions[f];
    return one === undefined ? "" : `${this.#words.group[one.group]} ${one.name}`;
  }

  functionOfId(id: string): NamedFunction | undefined {
    return this.functions.find((one) => one.id === id);
  }

  jointOfId(id: string): number {
    return this.#jointOf.get(id) ?? -1;
  }

  /** `12-3 white-blue`. */
  wire(n: number): string {
    const wire = this.#file.wires[n];
    if (wire === undefined) return "";
    const harness = this.#file.harnesses[wire.harness]?.number ?? 0;
    return this.#words.place.wire(`${harness}-${wire.number}`, this.#colour(wire.colour));
  }

  /** A plug, or the bare wire ends at an item. */
  landing(n: number): string {
    const landing = this.#file.landings[n];
    if (landing === undefined) return "";
    const { place } = this.#words;
    if (landing.half !== null) return place.half(landing.half, this.item(landing.item));
    return landing.grid === null
      ? place.ends(this.item(landing.item))
      : place.plug(landing.name, this.item(landing.item));
  }

  /** A plug by its id, or a terminal that stands for itself. */
  plugSpot(id: string): Spot {
    const landing = this.#file.landings.findIndex((one) => one.id === id);
    if (landing >= 0)
      return {
        text: this.landing(landing),
        item: this.#file.landings[landing]?.item ?? -1,
        landing,
        pin: null,
      };
    const n = this.#pointOf.get(id) ?? -1;
    const own = this.#file.points[n]?.landing ?? -1;
    return { text: this.point(n), item: this.#file.landings[own]?.item ?? -1, landing: own, pin: null };
  }

  /** A contact by its plug and cavity, or its terminal. */
  point(n: number): string {
    const point = this.#file.points[n];
    const landing = this.#file.landings[point?.landing ?? -1];
    if (point === undefined || landing === undefined) return "";
    const { place } = this.#words;
    if (point.pin === null) return place.terminal(this.item(landing.item), point.label);
    return place.cavity(this.landing(point.landing), point.pin);
  }

  /** Where a probe is held to touch a node. */
  spot(name: string): Spot {
    const { place } = this.#words;
    const n = this.#pointOf.get(pointOf(name)) ?? -1;
    const point = this.#file.points[n];
    const node = this.#file.nodes.indexOf(name);
    if (point === undefined) {
      const wires = this.#wires(node);
      return {
        text: wires === "" ? place.splice : `${place.splice}: ${wires}`,
        item: -1,
        landing: -1,
        pin: null,
      };
    }
    const landing = this.#file.landings[point.landing];
    const at = { item: landing?.item ?? -1, landing: point.landing, pin: point.pin };
    const isWireSide = name !== pointOf(name);
    const text = this.point(n);
    if (point.pin === null)
      return { ...at, text: isWireSide ? place.terminalWire(text, this.#wires(node)) : text };
    return { ...at, text: isWireSide ? place.plugSide(text, this.#wires(node)) : place.boardSide(text) };
  }

  /** What a suspect is, in words. */
  suspect(n: number): string {
    const kind = this.#file.suspects[n]?.[0];
    return kind === undefined ? "" : this.#words.suspects[kind](this.part(n));
  }

  /** Id under which all about a suspect's part is told: a wire, an item; of a contact its point. */
  thingOf(n: number): string {
    const suspect = this.#file.suspects[n];
    if (suspect === undefined) return "";
    const [, way, p] = suspect;
    if (way === "d") return this.#file.items[p]?.id ?? "";
    if (way === "s") return pointOf(this.#file.nodes[p] ?? "");
    const joint = this.#file.joints[p];
    if (joint === undefined) return "";
    return joint[0] === "e" ? (this.#file.items[joint[5]]?.id ?? "") : fileJointId(this.#file, p);
  }

  /** The part that a suspect is about. */
  part(n: number): string {
    const suspect = this.#file.suspects[n];
    if (suspect === undefined) return "";
    const [, way, p, q] = suspect;
    const { place } = this.#words;
    switch (way) {
      case "d":
        return this.item(p);
      case "s":
        return place.and(this.#nodePoint(p), this.#nodePoint(q));
      case "w":
        return place.and(this.joint(p), this.joint(q));
      default:
        return this.joint(p);
    }
  }

  /** A wire with its ends, a contact, a fuse, a part, an output of a board. */
  joint(n: number): string {
    const joint = this.#file.joints[n];
    if (joint === undefined) return "";
    const { place } = this.#words;
    const [kind, a, b, ref] = joint;
    if (kind === "w") return place.wireFrom(this.wire(ref), this.#nodePoint(a), this.#nodePoint(b));
    if (kind === "c") {
      const wires = this.#wires(a) || this.#wires(b);
      return wires === "" ? this.point(ref) : `${this.point(ref)} (${wires})`;
    }
    return this.#element(n, ref, joint[5]);
  }

  /** Item, landing and cavity that a joint is at. */
  jointSpot(n: number): Spot {
    const joint = this.#file.joints[n];
    if (joint === undefined) return { text: "", item: -1, landing: -1, pin: null };
    const text = this.joint(n);
    if (joint[0] === "e") return { text, item: joint[5], landing: -1, pin: null };
    return { ...this.spot(this.#file.nodes[joint[1]] ?? ""), text };
  }

  /** Places of what a suspect is about. */
  suspectSpots(n: number): readonly Spot[] {
    const suspect = this.#file.suspects[n];
    if (suspect === undefined) return [];
    const [, way, p, q] = suspect;
    if (way === "d") return [{ text: this.item(p), item: p, landing: -1, pin: null }];
    if (way === "s") return [p, q].map((node) => this.spot(this.#file.nodes[node] ?? ""));
    if (way === "w") return [this.jointSpot(p), this.jointSpot(q)];
    const joint = this.#file.joints[p];
    if (joint?.[0] === "w")
      return [joint[1], joint[2]].map((node) => this.spot(this.#file.nodes[node] ?? ""));
    return [this.jointSpot(p)];
  }

  /** Wires and their colours on the nodes of what a suspect is about; empty: none. */
  wiresOf(n: number): string {
    const suspect = this.#file.suspects[n];
    if (suspect === undefined || suspect[1] === "d" || suspect[1] === "s") return "";
    const joint = this.#file.joints[suspect[2]];
    if (joint === undefined || joint[0] === "w") return "";
    return [this.#wires(joint[1]), this.#wires(joint[2])].filter((text) => text !== "").join(", ");
  }

  #element(n: number, ref: number, item: number): string {
    const element = this.#file.elements[ref];
    const { place } = this.#words;
    const name = this.item(item);
    const fuse = this.#file.fuses.find(({ joint }) => joint === n);
    if (fuse !== undefined) return place.fuse(this.pick(fuse.labels), String(fuse.ratedA), fuse.size);
    if (element === undefined) return name;
    const isPart = element.of !== "board" && element.kind !== "diode" && element.kind !== "resistor";
    if (isPart) {
      const own = this.functions.find(({ id }) => id === fileJointId(this.#file, n));
      return own === undefined ? name : this.functionName(own.f);
    }
    if (element.control !== "") return place.output(element.control, name);
    const joint = this.#file.joints[n];
    const between = place.between(this.#nodePoint(joint?.[1] ?? -1), this.#nodePoint(joint?.[2] ?? -1));
    return place.onBoard(between, name);
  }

  #function(one: FileFunction, f: number): NamedFunction {
    const group = this.#group(one);
    const item = this.#file.items[one.item];
    const windings = this.#file.functions.filter(
      (other) => other.item === one.item && this.#group(other) === group,
    );
    // The winding that pulls in has the fewer ohms.
    const turn = [...windings].sort((p, q) => this.#ohm(p) - this.#ohm(q)).indexOf(one);
    const more =
      group === "coil" && windings.length === 2 ? ` (${this.#words.windings[turn] ?? turn + 1})` : "";
    const number = item?.number ?? null;
    return { f, id: one.id, group, item: one.item, number, name: `${this.item(one.item)}${more}` };
  }

  #group(one: FileFunction): Group {
    // What sends light to a sensor belongs to it.
    if (one.kind === "read" || this.#file.items[one.item]?.class === "sensor") return "switch";
    const kind = this.#elementOf(one.joint)?.kind;
    return kind === "coil" || kind === "motor" || kind === "speaker" ? kind : "lamp";
  }

  #ohm(one: FileFunction): number {
    return this.#elementOf(one.joint)?.ohm ?? 0;
  }

  #elementOf(joint: number): FaultFile["elements"][number] | undefined {
    const found = this.#file.joints[joint];
    return found?.[0] === "e" ? this.#file.elements[found[3]] : undefined;
  }

  #nodePoint(node: number): string {
    const name = this.#file.nodes[node] ?? "";
    const n = this.#pointOf.get(pointOf(name));
    return n === undefined ? this.#words.place.splice : this.point(n);
  }

  #wires(node: number): string {
    return (this.#wiresAt.get(node) ?? []).map((wire) => this.wire(wire)).join(", ");
  }

  #colour(code: string): string {
    const parts = code.match(/../g) ?? [];
    return parts.map((part) => this.#colours[part] ?? part).join(this.#at === 1 ? "/" : "-");
  }
}
