import { deepEqual, Query, sameMembers } from "@pinwright/kernel";
import type { ElectricRatings, Finding, WireRating } from "../../model/index.ts";
import { checkNetwork, checkRatings } from "../checks/index.ts";
import type { Protection, ProtectionNet } from "../protection/protect.ts";
import type { LimitedNets } from "./drops.ts";
import { type RatingTask, type Remember, rateNetwork } from "./rate-electric.ts";

type Findings = readonly Finding[];

/**
 * Electrical ratings and findings with a memory: the limits of a harness are found anew when its wires, bundles or
 * currents are others, what a source feeds when a length or limit there is, and all of it when a number of the shop is.
 */
export class ElectricRater {
  readonly #nets = new Query<ProtectionNet>(Object.is);
  readonly #currents = new Query<readonly number[]>(sameMembers);
  readonly #wires = new Query<readonly WireRating[]>(deepEqual);
  readonly #reached = new Query<readonly number[]>(sameMembers);
  readonly #sources = new Query<Protection>(Object.is);
  readonly #protection = new Query<Protection>(Object.is);
  readonly #limited = new Query<LimitedNets>(Object.is);
  readonly #carried = new Query<readonly unknown[]>(sameMembers);
  readonly #contacts = new Query<ElectricRatings["contacts"]>(deepEqual);
  readonly #fuses = new Query<ElectricRatings["fuses"]>(deepEqual);
  readonly #coils = new Query<ElectricRatings["coils"]>(deepEqual);
  readonly #lamps = new Query<ElectricRatings["lamps"]>(deepEqual);
  readonly #lampBoards = new Query<ElectricRatings["lampBoards"]>(deepEqual);
  readonly #supplies = new Query<ElectricRatings["supplies"]>(deepEqual);
  readonly #drops = new Query<ElectricRatings["drops"]>(deepEqual);
  readonly #ratings = new Query<ElectricRatings>(deepEqual);
  readonly #network = new Query<Findings>(Object.is);
  readonly #findings = new Query<Findings>(Object.is);

  rate(task: RatingTask): { readonly ratings: ElectricRatings; readonly findings: Findings } {
    const { machine, harnesses, solution, network } = task;
    const { elements, ends, nets, items, shop, book, options } = machine;
    const { fuses, supplies, activity, windings, bonds, groups, wire_types } = book.tables;
    const base = [network, elements, ends, nets, shop, fuses, supplies];
    const lengthsMm = new Map<string, number>();
    for (const { wires } of harnesses.values())
      for (const wire of wires) lengthsMm.set(wire.id, wire.finishedMm);
    const results = [...harnesses.values()].flatMap(({ wires, branches }) => [wires, branches]);
    const all = [...base, solution, activity, windings, groups, wire_types, ...results];
    const limits = new Map<string, number>();
    const ratings = this.#ratings.ask("all", all, () =>
      rateNetwork(task, {
        net: (find) => this.#nets.ask("all", base, find),
        wires: (id, find) => {
          const harness = harnesses.get(id);
          const amps = this.#currents.ask(id, [{}], () =>
            (harness?.wires ?? []).map((wire) => solution.wires.get(wire.id)?.rmsA.most ?? 0),
          );
          const rated = this.#wires.ask(id, [harness?.wires, harness?.branches, amps, shop], find);
          for (const { wireId, limitA } of rated) limits.set(wireId, limitA);
          return rated;
        },
        source: (own, find) => {
          const { id } = own.source;
          const reached = this.#reached.ask(id, [{}], () =>
            own.wireIds.flatMap((wireId) => [lengthsMm.get(wireId) ?? 0, limits.get(wireId) ?? 0]),
          );
          return this.#sources.ask(id, [...base, reached], find);
        },
        protection: alone(this.#protection),
        limited: alone(this.#limited),
        carried: (find) => this.#carried.ask("all", [{}], find),
        parts: {
          contacts: alone(this.#contacts),
          fuses: alone(this.#fuses),
          coils: alone(this.#coils),
          lamps: alone(this.#lamps),
          lampBoards: alone(this.#lampBoards),
          supplies: alone(this.#supplies),
          drops: alone(this.#drops),
        },
      }),
    );
    const facts = { ...task, ratings };
    const fixed = this.#network.ask(
      "all",
      [network, elements, ends, nets, bonds, ...options, kindsOf(items)],
      () => checkNetwork(facts),
    );
    const findings = this.#findings.ask("all", [ratings, fixed, ...all], () => [
      ...fixed,
      ...checkRatings(facts),
    ]);
    return { ratings, findings };
  }

  /** How many sources were looked at so far, for tests of growth. */
  get computed(): Readonly<Record<"protections", number>> {
    return { protections: this.#sources.computed };
  }

  /** Forgets what the last run did not ask for. */
  sweep(): void {
    for (const query of [
      this.#nets,
      this.#currents,
      this.#wires,
      this.#reached,
      this.#sources,
      this.#protection,
      this.#limited,
      this.#carried,
      this.#contacts,
      this.#fuses,
      this.#coils,
      this.#lamps,
      this.#lampBoards,
      this.#supplies,
      this.#drops,
      this.#ratings,
      this.#network,
      this.#findings,
    ])
      query.sweep();
  }
}

/** The memory of something that there is only one of. */
const alone =
  <T>(query: Query<T>): Remember<T> =>
  (inputs, find) =>
    query.ask("all", inputs, find);

/** Items without their places. */
const kindsOf = (items: RatingTask["machine"]["items"]): string => {
  const bare: string[] = [];
  for (const { id, kind, type } of items.values())
    if ((kind === "device" || kind === "mechanism") && type.needs_bond) bare.push(id);
  return bare.join(" ");
};
