import { compareText } from "@pinwright/kernel";
import {
  loadsBehindFuses,
  type ProgramPoint,
  programMap,
  type SwitchMatrix,
  switchMatrices,
} from "../../electric/index.ts";
import type { LineResult } from "../../model/index.ts";
import type { About } from "../about.ts";
import type { NamedThing, Share, ShareKind, ThingControl } from "./thing.ts";

/** Things of a machine by what they have in common; made once for a line, as far as it is asked for. */
export class Sharing {
  readonly #line: LineResult;
  readonly #named: (id: string) => NamedThing;
  #matrices: readonly SwitchMatrix[] | null = null;
  #program: readonly ProgramPoint[] | null = null;
  #behind: ReadonlyMap<string, readonly string[]> | null = null;

  constructor(line: LineResult, named: (id: string) => NamedThing) {
    this.#line = line;
    this.#named = named;
  }

  /** Points of boards that drive or read an item, or what is in it. */
  controls(itemIds: ReadonlySet<string>): readonly ThingControl[] {
    return this.#points()
      .filter(({ deviceId, boardId }) => itemIds.has(deviceId) || itemIds.has(boardId))
      .map(({ boardId, address, pointId, kind, control }) => ({
        ...{ board: this.#named(boardId), address, pointId, kind, control },
      }));
  }

  /** Loads behind each fuse, by the fuse's element and by its row. */
  behind(fuse: string): readonly string[] {
    this.#behind ??= this.#loadsBehind();
    return this.#behind.get(fuse) ?? [];
  }

  /** Loads of a supply, as ids of their elements. */
  ofSupply(supplyId: string): readonly string[] {
    return [...this.#line.electric.loads.values()]
      .filter((load) => load.supplyId === supplyId)
      .map(({ loadId }) => loadId);
  }

  /** What shares supply, fuse, return, feed, matrix line, board, connector and harness with an item. */
  ofItem(about: About, itemIds: ReadonlySet<string>): readonly Share[] {
    return [
      ...this.#bySupply(itemIds),
      ...this.#byFuse(itemIds),
      ...this.#byNet(about, itemIds),
      ...this.#byMatrix(itemIds),
      ...this.#byBoard(itemIds),
      ...this.byConnector(about, itemIds),
      ...this.byHarness(about.harnessIds, itemIds),
    ];
  }

  byHarness(harnessIds: readonly string[], itemIds: ReadonlySet<string>): readonly Share[] {
    const { machine, harnesses } = this.#line;
    return harnessIds.flatMap((id) => {
      const own = harnesses.get(id)?.landingIds ?? [];
      return this.#share(
        "harness",
        id,
        own.flatMap((landing) => machine.landings.get(landing)?.itemId ?? []),
        itemIds,
      );
    });
  }

  /** Housings that its wires end in, with what else is plugged there. */
  byConnector(
    { points, wires }: Pick<About, "points" | "wires">,
    itemIds: ReadonlySet<string>,
  ): readonly Share[] {
    const { machine, harnesses } = this.#line;
    const ends = [...points.flatMap((point) => point.wires), ...wires].flatMap(({ wire }) => [
      wire.a,
      wire.b,
    ]);
    const landingIds = new Set(
      ends.flatMap((point) => {
        const landing = machine.landings.get(machine.points.get(point)?.landingId ?? "");
        return landing?.connector == null ? [] : [landing.id];
      }),
    );
    return [...landingIds].sort(compareText).flatMap((id) => {
      const own = new Set(machine.landings.get(id)?.pointIds);
      const far = [...harnesses.values()].flatMap(({ wires: all }) =>
        all.flatMap(({ a, b }) => (own.has(a) ? [b] : own.has(b) ? [a] : [])),
      );
      const items = far.flatMap((point) => machine.points.get(point)?.itemId ?? []);
      return this.#share(
        "connector",
        id,
        items,
        new Set([...itemIds, machine.landings.get(id)?.itemId ?? ""]),
      );
    });
  }

  #share(kind: ShareKind, of: string, ids: Iterable<string>, but: ReadonlySet<string>): readonly Share[] {
    const things = [...new Set(ids)].filter((id) => !but.has(id)).sort(compareText);
    return things.length === 0 ? [] : [{ kind, of: this.#named(of), things: things.map(this.#named) }];
  }

  #bySupply(itemIds: ReadonlySet<string>): readonly Share[] {
    const loads = [...this.#line.electric.loads.values()];
    const own = new Set(loads.filter(({ itemId }) => itemIds.has(itemId)).map(({ supplyId }) => supplyId));
    return [...own].sort(compareText).flatMap((supplyId) =>
      this.#share(
        "supply",
        supplyId,
        loads.filter((load) => load.supplyId === supplyId).map(({ itemId }) => itemId),
        itemIds,
      ),
    );
  }

  #byFuse(itemIds: ReadonlySet<string>): readonly Share[] {
    const { electric, ratings } = this.#line;
    const itemOf = (loadId: string): string => electric.loads.get(loadId)?.itemId ?? loadId;
    return [...ratings.fuses.values()].flatMap(({ elementId, fuseId }) => {
      const items = this.behind(elementId).map(itemOf);
      return items.some((id) => itemIds.has(id))
        ? this.#share("fuse", fuseId ?? elementId, items, itemIds)
        : [];
    });
  }

  /** Nets of its points, with whatever else hangs on them: a supply, its return, or a line. */
  #byNet({ points }: About, itemIds: ReadonlySet<string>): readonly Share[] {
    const { machine } = this.#line;
    const nets = new Set(points.flatMap(({ netId }) => netId ?? []));
    return [...nets].sort(compareText).flatMap((id) => {
      const net = machine.nets.get(id);
      if (net === undefined) return [];
      const items = machine.ends
        .filter((end) => end.net === id)
        .flatMap(({ point }) => machine.points.get(point)?.itemId ?? []);
      const kind = net.supply === null ? "net" : net.volts === 0 ? "return" : "feed";
      return this.#share(kind, id, items, itemIds);
    });
  }

  #byMatrix(itemIds: ReadonlySet<string>): readonly Share[] {
    this.#matrices ??= switchMatrices(this.#line.machine);
    return this.#matrices.flatMap(({ columns, rows, crossings }) =>
      crossings
        .filter(({ itemId }) => itemIds.has(itemId))
        .flatMap(({ column, row }) => [
          ...this.#share(
            "column",
            columns[column]?.id ?? "",
            crossings.filter((one) => one.column === column).map(({ itemId }) => itemId),
            itemIds,
          ),
          ...this.#share(
            "row",
            rows[row]?.id ?? "",
            crossings.filter((one) => one.row === row).map(({ itemId }) => itemId),
            itemIds,
          ),
        ]),
    );
  }

  #byBoard(itemIds: ReadonlySet<string>): readonly Share[] {
    const points = this.#points();
    const boards = new Set(
      points.filter(({ deviceId }) => itemIds.has(deviceId)).map(({ boardId }) => boardId),
    );
    return [...boards].sort(compareText).flatMap((board) =>
      this.#share(
        "board",
        board,
        points.filter(({ boardId }) => boardId === board).map(({ deviceId }) => deviceId),
        itemIds,
      ),
    );
  }

  #points(): readonly ProgramPoint[] {
    this.#program ??= programMap(this.#line.machine);
    return this.#program;
  }

  #loadsBehind(): ReadonlyMap<string, readonly string[]> {
    const { machine, harnesses, ratings } = this.#line;
    const fuses = [...ratings.fuses.values()];
    const behind = new Map(loadsBehindFuses(machine, harnesses, fuses));
    for (const { elementId, fuseId } of fuses)
      if (fuseId !== null) behind.set(fuseId, behind.get(elementId) ?? []);
    return behind;
  }
}
