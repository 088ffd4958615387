import { deepEqual, Query } from "@pinwright/kernel";
import type { Finding, HarnessResult, Machine, PanelsResult, PartsResult } from "../model/index.ts";
import { BillAssembler } from "./bill/assemble.ts";
import {
  boardContents,
  bomContents,
  extraContents,
  mechanismContents,
  panelContents,
} from "./bill/book-contents.ts";
import { type Contents, ContentsBuilder, ONE, sameContents } from "./bill/contents.ts";
import { harnessContents, harnessNode } from "./bill/harness-contents.ts";
import { machineNode } from "./bill/nodes.ts";
import { type PartIndex, partIndex } from "./bill/part-index.ts";
import { placedContents, placedInputs } from "./bill/placed-contents.ts";
import { checkParts } from "./checks/check-parts.ts";

export interface Billed {
  readonly parts: PartsResult;
  readonly findings: readonly Finding[];
}

/** An empty bill. */
export const NO_PARTS: PartsResult = {
  bill: { nodes: new Map(), lines: [], totals: new Map(), order: [], circles: [] },
};

type Several = readonly Contents[];
type Keys = ReadonlyMap<string, readonly number[]>;

/** The bill of one machine, with a memory: a harness, board type or mechanism type is billed anew when it has changed. */
export class PartsSolver {
  readonly #index = new Query<PartIndex>(deepEqual);
  readonly #harnesses = new Query<Contents>(sameContents);
  readonly #laid = new Query<Contents>(sameContents);
  readonly #placed = new Query<Contents>(sameContents);
  readonly #extras = new Query<Contents>(sameContents);
  readonly #told = new Query<Several>(deepEqual);
  readonly #assembler = new BillAssembler();
  readonly #result = new Query<PartsResult>(Object.is);
  readonly #findings = new Query<readonly Finding[]>(deepEqual);
  #last: PartsResult = NO_PARTS;

  /** The bill that was solved last. */
  get result(): PartsResult {
    return this.#last;
  }

  /** How many harnesses were billed so far, for tests of growth. */
  get computed(): number {
    return this.#harnesses.computed;
  }

  /**
   * @param keys cavities that a key blocks, by landing
   * @param panels sizes as cut; a panel that is not among them counts as drawn
   */
  solve(
    machine: Machine,
    harnesses: ReadonlyMap<string, HarnessResult>,
    keys: Keys,
    panels: Pick<PanelsResult, "cuts"> = { cuts: [] },
  ): Billed {
    const { book, shop, options, elements } = machine;
    const t = book.tables;
    const types = [t.parts, t.board_types, t.mechanism_types, shop.tables.stock_sheets];
    const index = this.#index.ask("all", types, () => partIndex(machine));
    const named = [book.machine.id, book.machine.label, book.machine.label_zh];
    const told = (key: string, inputs: readonly unknown[], compute: () => Several): Several =>
      this.#told.ask(key, [index, ...inputs], compute);
    const placed = this.#placed.ask("all", [index, ...named, ...placedInputs(machine)], () =>
      placedContents(machine, index),
    );
    const extras = this.#extras.ask(
      "all",
      [index, ...named, t.waypoints, t.fuses, t.bonds, t.connector_families, elements, ...options],
      () => extraContents(machine, index),
    );
    const bill = this.#assembler.assemble([
      placed,
      this.#laidOf(machine, harnesses),
      extras,
      ...this.#harnessContents(machine, index, harnesses, keys),
      ...told("boards", [t.board_types, t.placements], () => boardContents(machine, index)),
      ...told("mechanisms", [t.mechanism_types, t.mechanism_devices, t.device_types], () =>
        mechanismContents(machine, index),
      ),
      ...told("panels", [...named, machine.panels, panels.cuts], () =>
        panelContents(machine, index, panels.cuts),
      ),
      ...told("bom", [...named, t.bom, ...options], () => bomContents(machine, index)),
    ]);
    this.#last = this.#result.ask("all", [bill], () => ({ bill }));
    const checked = [bill.nodes, bill.circles, t.parts, t.tooling, t.bom, shop];
    const findings = this.#findings.ask("all", checked, () => checkParts(machine, bill));
    return { parts: this.#last, findings };
  }

  sweep(): void {
    for (const part of [
      this.#index,
      this.#harnesses,
      this.#laid,
      this.#placed,
      this.#extras,
      this.#told,
      this.#assembler,
      this.#result,
      this.#findings,
    ])
      part.sweep();
  }

  /** The harnesses themselves, one of each. */
  #laidOf(machine: Machine, harnesses: ReadonlyMap<string, HarnessResult>): Contents {
    const { id, label, label_zh } = machine.book.machine;
    const inputs = [id, label, label_zh, ...[...harnesses.values()].map(({ harness }) => harness)];
    return this.#laid.ask("all", inputs, () => {
      const contents = new ContentsBuilder(machineNode(machine));
      for (const result of harnesses.values())
        contents.add({ child: harnessNode(result), why: "harness", quantity: ONE, at: result.harness.id });
      return contents.build();
    });
  }

  #harnessContents(
    machine: Machine,
    index: PartIndex,
    harnesses: ReadonlyMap<string, HarnessResult>,
    keys: Keys,
  ): Several {
    const { cables, connector_families, wire_types } = machine.book.tables;
    const { holders } = machine.shop.tables;
    return [...harnesses].map(([id, result]) => {
      const landings = result.landingIds.map((landingId) => machine.landings.get(landingId));
      const blocked = result.landingIds.map((landingId) => keys.get(landingId)?.join(" "));
      const inputs = [
        index,
        result,
        cables,
        connector_families,
        wire_types,
        holders,
        ...landings,
        ...blocked,
      ];
      return this.#harnesses.ask(id, inputs, () => harnessContents(machine, index, result, keys));
    });
  }
}
