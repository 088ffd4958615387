import { deepEqual, NestedQuery, Query, sameMembers } from "@pinwright/kernel";
import { choicesOfKinds, type HarnessResult, type Item, type Machine } from "../../model/index.ts";
import { type Draft, emptyDraft } from "./draft.ts";
import { type Drafted, draftSteps } from "./drafts.ts";
import { harnessLabels } from "./labels.ts";
import { sideOf } from "./side.ts";

/** Skill of those who lay harnesses. */
const WIRING_SKILL = "wiring";

/** The drafts of all steps, with a memory: they are drafted anew when something is where or what it was not. */
export class Drafting {
  readonly #harnesses = new Query<readonly Draft[]>(deepEqual);
  readonly #drafted = new NestedQuery<Drafted, Draft>(
    (a, b) => sameMembers(a.drafts, b.drafts) && deepEqual(a.findings, b.findings),
    deepEqual,
  );

  solve(machine: Machine, harnesses: ReadonlyMap<string, HarnessResult>): Drafted {
    const laid = [...harnesses.values()].flatMap((harness) => this.#harnessDrafts(machine, harness));
    const { book, panels, shop } = machine;
    const { steps, stations, mechanism_types, mechanism_steps, fastener_types } = book.tables;
    const inputs: unknown[] = [steps, stations, mechanism_types, mechanism_steps, fastener_types];
    inputs.push(panels, shop, ...choicesOfKinds(machine, ["step", "station", "time"]), ...laid);
    for (const item of machine.items.values()) addInputs(inputs, item);
    return this.#drafted.ask("all", inputs, (parts) => {
      const { drafts, findings } = draftSteps(machine, laid);
      return { drafts: drafts.map((draft) => parts.ask(draft.id, [{}], () => draft)), findings };
    });
  }

  sweep(): void {
    this.#harnesses.sweep();
    this.#drafted.sweep();
  }

  /** The panel side of a harness is the one where most of its ends are. A harness without ends is no work. */
  #harnessDrafts(machine: Machine, { harness, labels, landingIds }: HarnessResult): readonly Draft[] {
    const places = landingIds.flatMap((id) => machine.landings.get(id)?.place ?? []);
    const inputs = [harness, ...places.flatMap(({ panelId, side }) => [panelId, side])];
    return this.#harnesses.ask(harness.id, inputs, () => {
      if (places.length === 0) return [];
      const id = `harness:${harness.id}`;
      const draft = emptyDraft("harness", id, harnessLabels(labels));
      return [{ ...draft, ...sideOf(places), harnessId: harness.id, skill: WIRING_SKILL }];
    });
  }
}

/**
 * What a draft is made from: of what is grouped by its place the item itself; of mechanisms, their devices and what
 * holds something not where exactly it is, so that a mechanism that is moved about changes no draft.
 */
function addInputs(inputs: unknown[], item: Item): void {
  if (item.kind === "mechanism") inputs.push(item.id, item.type, item.labels.en, item.labels.zh);
  else if (item.kind === "fastener") {
    if (item.holds === null) {
      inputs.push(item);
      return;
    }
    inputs.push(item.id, item.type, item.holds, item.moments.includes("recheck"));
  } else if (item.parentId !== null) {
    inputs.push(item.id);
    return;
  } else {
    inputs.push(item);
    return;
  }
  inputs.push(item.place.panelId, item.place.side);
}
