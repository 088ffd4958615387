import { deepEqual, Query, sameMembers } from "@pinwright/kernel";
import {
  choicesOfKinds,
  type FasteningResult,
  type Finding,
  type HarnessResult,
  type Machine,
  type StepsResult,
  type WorkStep,
} from "../model/index.ts";
import { checkSteps } from "./checks.ts";
import { Drafting } from "./derive/drafting.ts";
import { type NumberedDraft, numberSteps, workStep } from "./derive/numbered.ts";
import { type OrderedSteps, StepOrder } from "./derive/order-steps.ts";
import type { StepWork } from "./motions/work.ts";
import { StepWorks } from "./motions/works.ts";
import { OrderSolver, type Sequence, type SequenceNode, sequenceSteps } from "./order/index.ts";

export interface Stepped {
  readonly steps: StepsResult;
  readonly findings: readonly Finding[];
}

/** No steps yet. */
export const NO_STEPS: StepsResult = {
  steps: [],
  edges: [],
  turnOvers: 0,
  fewestTurnOvers: 0,
  boxChanges: 0,
  bitChanges: 0,
};

/**
 * The steps of assembly in their order, with a memory. What is in which step is found anew when something is in another
 * place or of another type, but for mechanisms that are only moved; the order when a step holds other things or another
 * thing comes first; the walk and the times of a step when something in it has changed.
 */
export class StepsSolver {
  readonly #things = new OrderSolver();
  readonly #drafting = new Drafting();
  readonly #order = new StepOrder();
  readonly #works = new StepWorks();
  readonly #nodes = new Query<SequenceNode>(deepEqual);
  readonly #sequence = new Query<Sequence>(deepEqual);
  readonly #numbers = new Query<readonly NumberedDraft[]>(Object.is);
  readonly #steps = new Query<WorkStep>(deepEqual);
  readonly #result = new Query<StepsResult>(Object.is);
  readonly #checks = new Query<readonly Finding[]>(deepEqual);
  readonly #findings = new Query<readonly Finding[]>(sameMembers);

  solve(
    machine: Machine,
    fastening: FasteningResult,
    harnesses: ReadonlyMap<string, HarnessResult>,
  ): Stepped {
    const things = this.#things.solve(machine, fastening, harnesses);
    const drafted = this.#drafting.solve(machine, harnesses);
    const ordered = this.#order.solve(machine, drafted.drafts, things);
    const works = this.#works.solve(machine, fastening, harnesses, ordered);
    const sequence = this.#sequenceOf(ordered, works);
    const list = this.#numbered(machine, ordered, works, sequence);
    const steps = this.#result.ask("all", [ordered.edges, sequence, ...list], () => ({
      steps: list,
      edges: ordered.edges,
      turnOvers: sequence.turnOvers,
      fewestTurnOvers: sequence.fewestTurnOvers,
      boxChanges: sequence.boxChanges,
      bitChanges: sequence.bitChanges,
    }));
    const lists = [things.findings, drafted.findings, ordered.findings, this.#check(machine, steps)];
    return { steps, findings: this.#findings.ask("all", lists, () => lists.flat()) };
  }

  sweep(): void {
    for (const part of [
      this.#things,
      this.#drafting,
      this.#order,
      this.#works,
      this.#nodes,
      this.#sequence,
      this.#numbers,
      this.#steps,
      this.#result,
      this.#checks,
      this.#findings,
    ])
      part.sweep();
  }

  /** How many steps had their work found so far, for tests of growth. */
  get computed(): number {
    return this.#works.computed;
  }

  #check(machine: Machine, result: StepsResult): readonly Finding[] {
    const { stations, mechanism_steps } = machine.book.tables;
    const choices = choicesOfKinds(machine, ["station", "time"]);
    const inputs = [result, stations, mechanism_steps, ...choices];
    return this.#checks.ask("all", inputs, () => checkSteps(machine, result.steps));
  }

  #sequenceOf({ drafts, edges }: OrderedSteps, works: ReadonlyMap<string, StepWork>): Sequence {
    const nodes = drafts.map((draft) => {
      const work = works.get(draft.id);
      return this.#nodes.ask(draft.id, [draft, work], () => ({
        id: draft.id,
        panelId: draft.panelId,
        side: draft.side,
        drives: work?.bits ?? [],
        boxes: work?.boxes ?? [],
        rank: draft.rank,
      }));
    });
    return this.#sequence.ask("all", [edges, ...nodes], () => sequenceSteps(nodes, edges));
  }

  #numbered(
    machine: Machine,
    { drafts, edges }: OrderedSteps,
    works: ReadonlyMap<string, StepWork>,
    { order }: Sequence,
  ): readonly WorkStep[] {
    const { numbers } = machine.shop;
    const numbered = this.#numbers.ask("all", [drafts, edges, order], () =>
      numberSteps(drafts, edges, order),
    );
    return numbered.flatMap((at) => {
      const work = works.get(at.draft.id);
      if (work === undefined) return [];
      return [this.#steps.ask(at.draft.id, [at, work, numbers], () => workStep(at, work, numbers))];
    });
  }
}
