import type { ArrivedFact, FactBody, UnitGate } from "@pinwright/contract";
import type { SeenFacts, Store } from "@pinwright/store";
import { Refused } from "../http/problem.ts";
import type { Lane } from "../threads/lane.ts";
import type { ResultOf } from "../threads/messages.ts";
import type { GateFacts } from "./gate-facts.ts";

/** Facts that leave a released unit as it is: a release after them would say nothing new. */
const HARMLESS: ReadonlySet<FactBody["kind"]> = new Set(["noted", "handed", "sent", "arrived", "released"]);

/** How often a release is judged again because something arrived meanwhile. */
const TRIES = 5;

interface Judged {
  readonly gate: UnitGate;
  /** The last release of the unit; null: there is none. */
  readonly release: ArrivedFact | null;
  /** Whether anything was recorded since that could change what was released. */
  readonly changed: boolean;
  /** How much was looked at. */
  readonly seen: SeenFacts;
}

/** Holds units and releases them: the server alone writes that a unit may ship. */
export class Gates {
  readonly #records: Store["records"];
  readonly #facts: GateFacts;
  readonly #lane: Lane;

  constructor({ records }: Store, facts: GateFacts, lane: Lane) {
    this.#records = records;
    this.#facts = facts;
    this.#lane = lane;
  }

  /** What keeps a unit. */
  async gate(unit: string): Promise<UnitGate> {
    return (await this.#judge(unit)).gate;
  }

  /**
   * Releases a unit, once: one that is released already and is as it was is answered as before. Refused while anything
   * stands.
   */
  async release(
    unit: string,
    person: string,
  ): Promise<{ readonly fact: ArrivedFact; readonly gate: UnitGate; readonly isNew: boolean }> {
    for (let tries = 0; tries < TRIES; tries++) {
      const { gate, release, changed, seen } = await this.#judge(unit);
      const standing = gate.blocks.filter(({ lifted }) => !lifted);
      if (standing.length > 0)
        throw new Refused("conflict", `${unit} is kept by ${standing.length} things. Nothing was released.`, {
          blocks: standing,
        });
      if (release !== null && !changed) return { fact: release, gate, isNew: false };
      const fact = await this.#records.release(unit, seen, person);
      if (fact === null) continue;
      const released = { at: fact.receivedAt, person };
      return { fact, gate: { ...gate, released, shippable: true }, isNew: true };
    }
    throw new Refused("busy", `Something is being recorded of ${unit} right now. Try again in a moment.`);
  }

  async #judge(unit: string): Promise<Judged> {
    const { given, arrived, recalls } = await this.#facts.of(unit);
    let result: ResultOf<"gate"> = await this.#lane.run({ kind: "gate", given });
    if (result.cold.length > 0)
      result = await this.#lane.run({
        kind: "gate",
        given: await this.#facts.withTables(given, result.cold),
      });
    const { blocks } = result;
    const release = arrived.findLast(({ fact: { body } }) => body.kind === "released" && body.unit === unit);
    return {
      gate: {
        unit,
        blocks,
        released: release === undefined ? null : { at: release.fact.at, person: release.fact.person },
        shippable: release !== undefined && blocks.every(({ lifted }) => lifted),
      },
      release: release ?? null,
      changed: release !== undefined && arrived.some((one) => isNews(one, release)),
      seen: { facts: arrived.length, recalls: recalls.length },
    };
  }
}

/** Whether a fact came after a release, and could change what was released. */
function isNews({ fact: { stream, seq, body } }: ArrivedFact, { fact: released }: ArrivedFact): boolean {
  if (HARMLESS.has(body.kind) || released.body.kind !== "released") return false;
  return seq > (released.body.heads.find(([name]) => name === stream)?.[1] ?? 0);
}
