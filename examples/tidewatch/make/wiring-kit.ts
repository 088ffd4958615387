import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

type Class = BookRow<"nets">["class"];
type NetColumns = Partial<Omit<BookRow<"nets">, "id" | "class">>;

/** An in-line connector as the author writes it; its ways follow from the nets that pass it. */
export interface InlineWritten {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
  readonly family: "i250" | "i420";
  /** Cavities that are blocked by a key. */
  readonly keys: readonly number[];
  readonly place: Pick<BookRow<"inlines">, "panel" | "side" | "x_mm" | "y_mm" | "rotation_deg">;
  readonly mounting?: BookRow<"inlines">["mounting"];
}

interface InlineMade {
  readonly written: InlineWritten;
  /** Nets by cavity. */
  readonly used: Map<number, string>;
}

/**
 * Collects the nets of the machine: which points belong to them in which harness, where they pass an in-line
 * connector, and in which order the hops of a supply or bus go from board to board.
 */
export class Wiring {
  readonly #nets = new Map<string, Partial<BookRow<"nets">>>();
  readonly #ends: Partial<BookRow<"ends">>[] = [];
  readonly #taken = new Map<string, string>();
  readonly #inlines = new Map<string, InlineMade>();
  readonly #choices: Partial<BookRow<"choices">>[] = [];
  readonly #harnesses = new Set<string>();

  inline(...written: readonly InlineWritten[]): void {
    for (const one of written) this.#inlines.set(one.id, { written: one, used: new Map() });
  }

  /** Makes a net; making it again with the same class is a mistake of the author. */
  net(id: string, cls: Class, label: string, label_zh: string, columns: NetColumns = {}): string {
    if (this.#nets.has(id)) throw new Error(`Net ${id} is made twice.`);
    this.#nets.set(id, { id, class: cls, label, label_zh, ...columns });
    return id;
  }

  has(net: string): boolean {
    return this.#nets.has(net);
  }

  /** Says that points belong to a net in a harness. */
  end(net: string, harness: string, ...points: readonly string[]): void {
    if (!this.#nets.has(net)) throw new Error(`Net ${net} is not made.`);
    this.#harnesses.add(harness);
    for (const point of points) {
      const before = this.#taken.get(`${point} ${harness}`);
      if (before !== undefined) throw new Error(`${point} is in ${before} and in ${net}.`);
      this.#taken.set(`${point} ${harness}`, net);
      this.#ends.push({ point, net, harness });
    }
  }

  /** Takes a net through an in-line connector: its half `a` in one harness, `b` in the other. */
  through(inline: string, net: string, harnessA: string, harnessB: string): readonly [string, string] {
    const made = this.#inlines.get(inline);
    if (made === undefined) throw new Error(`In-line connector ${inline} is not there.`);
    let cavity = 1;
    while (made.used.has(cavity) || made.written.keys.includes(cavity)) cavity += 1;
    made.used.set(cavity, net);
    const points = [`${inline}:a.${cavity}`, `${inline}:b.${cavity}`] as const;
    this.end(net, harnessA, points[0]);
    this.end(net, harnessB, points[1]);
    return points;
  }

  /** Fixes the order in which a net runs through its points in a harness; `/` starts a further trail. */
  order(net: string, harness: string, points: readonly string[], reason: string): void {
    this.#choices.push({
      kind: "chain",
      subject: `${net}|${harness}`,
      value: points.join(" "),
      held: "pinned",
      by: "designer",
      reason,
    });
  }

  /** Gives one wire another type than its net's. */
  wireType(
    net: string,
    harness: string,
    ends: readonly [string, string],
    type: string,
    reason: string,
  ): void {
    const [a, b] = ends[0] < ends[1] ? ends : [ends[1], ends[0]];
    this.#choices.push({
      kind: "wire-type",
      subject: `${net}|${harness}|${a}|${b}`,
      value: type,
      held: "pinned",
      by: "designer",
      reason,
    });
  }

  /** Declares a live point that this machine does not use. */
  spare(point: string, reason: string): void {
    this.#choices.push({
      kind: "spare",
      subject: point,
      value: "spare",
      held: "pinned",
      by: "designer",
      reason,
    });
  }

  isUsed(point: string): boolean {
    return this.#ends.some((end) => end.point === point);
  }

  get harnessIds(): ReadonlySet<string> {
    return this.#harnesses;
  }

  topic(): Topic {
    const types = new Map<string, { readonly ways: number; readonly made: InlineMade }>();
    const typeOf = (made: InlineMade): string => {
      const { family, keys } = made.written;
      const most = Math.max(...made.used.keys(), ...keys);
      const even = family === "i420" && most > 3 ? most + (most % 2) : most;
      const id = `ic.${family}-${even}${keys.length > 0 ? `-k${keys.join("-")}` : ""}`;
      types.set(id, { ways: even, made });
      return id;
    };
    const inlines = [...this.#inlines.values()]
      .filter((made) => made.used.size > 0)
      .map((made) => ({
        id: made.written.id,
        label: made.written.label,
        label_zh: made.written.labelZh,
        connector: typeOf(made),
        ...made.written.place,
        mounting: made.written.mounting ?? ("clip" as const),
      }));
    const spares = inlines.flatMap((row) => {
      const made = this.#inlines.get(row.id);
      const ways = types.get(row.connector)?.ways ?? 0;
      return Array.from({ length: ways }, (_, i) => i + 1)
        .filter((n) => made && !made.used.has(n) && !made.written.keys.includes(n))
        .flatMap((n) => [`${row.id}:a.${n}`, `${row.id}:b.${n}`]);
    });
    for (const point of spares) this.spare(point, "cavity left over");
    return {
      tables: {
        nets: rows("nets", [...this.#nets.values()]),
        ends: rows("ends", this.#ends),
        inlines: rows("inlines", inlines),
        choices: rows("choices", this.#choices),
        connectors: rows(
          "connectors",
          [...types].map(([id, { ways, made }]) => ({
            id,
            name: id.slice(3),
            label: `in-line connector, ${ways} ways`,
            family: made.written.family,
            ways,
            rows: made.written.family === "i420" && ways > 3 ? 2 : 1,
            housing_part: `housing.${made.written.family}-${ways}-f`,
            mate_part: `housing.${made.written.family}-${ways}-m`,
            key_part: made.written.keys.length > 0 ? `key.${made.written.family}` : null,
          })),
        ),
        pins: rows(
          "pins",
          [...types].flatMap(([id, { made }]) =>
            made.written.keys.map((pin) => ({ connector: id, pin, use: "key" as const })),
          ),
        ),
      },
    };
  }
}
