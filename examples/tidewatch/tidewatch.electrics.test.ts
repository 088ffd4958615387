import { type Item, type Machine, type PlacedElement, resolveMachine } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { assemble } from "./make/assemble.ts";

const { book, shop } = assemble();
const machine: Machine = resolveMachine(book, shop);
const { tables } = book;

/** Groups of points that are joined. */
class Joined {
  readonly #up = new Map<string, string>();

  find(point: string): string {
    let at = point;
    for (let up = this.#up.get(at); up !== undefined; up = this.#up.get(at)) at = up;
    return at;
  }

  join(a: string, b: string): void {
    const [p, q] = [this.find(a), this.find(b)];
    if (p !== q) this.#up.set(p, q);
  }

  together(a: string | null, b: string | null): boolean {
    return a !== null && b !== null && this.find(a) === this.find(b);
  }
}

/** Joins points by the wires of each harness, by mated in-line connectors and by elements of some kinds. */
function joined(through: (element: PlacedElement) => boolean): Joined {
  const all = new Joined();
  const first = new Map<string, string>();
  for (const end of machine.ends) {
    const key = `${end.net}|${end.harness}`;
    const other = first.get(key);
    if (other === undefined) first.set(key, end.point);
    else all.join(other, end.point);
  }
  for (const inline of tables.inlines) {
    const ways = tables.connectors.find((c) => c.id === inline.connector)?.ways ?? 0;
    for (let n = 1; n <= ways; n += 1) all.join(`${inline.id}:a.${n}`, `${inline.id}:b.${n}`);
  }
  for (const element of machine.elements) {
    if (element.row.kind === "link" || through(element)) all.join(element.fromPointId, element.toPointId);
  }
  return all;
}

/** Copper only: what a wire, a mated contact or a link joins. */
const copper = joined(() => false);
/** A shunt or a piece of board copper; not a tie to earth, through which all returns would be one. */
const shunt = ({ row }: PlacedElement): boolean =>
  row.kind === "resistor" && (row.ohm ?? 1) < 0.5 && !(row.control ?? "").startsWith("tie");
/** Copper, fuses, shunts and a closed interlock: the way of a supply's current. */
const fed = joined(
  (e) =>
    e.row.kind === "fuse" || shunt(e) || (e.row.kind === "contact" && e.row.control === "interlock relay"),
);
/** The same with the coin door open. */
const doorOpen = joined((e) => e.row.kind === "fuse" || shunt(e));

const kind = (...kinds: readonly PlacedElement["row"]["kind"][]): readonly PlacedElement[] =>
  machine.elements.filter((e) => kinds.includes(e.row.kind));
const itemOf = (element: PlacedElement): Item | undefined => machine.items.get(element.itemId);
const isDevice = (element: PlacedElement, ...classes: readonly string[]): boolean => {
  const item = itemOf(element);
  return item?.kind === "device" && classes.includes(item.type.class);
};
const supply = (id: string) => tables.supplies.find((s) => s.id === id);
const byRoot = (elements: readonly PlacedElement[], end: "fromPointId" | "toPointId") => {
  const map = new Map<string, PlacedElement[]>();
  for (const element of elements) {
    const root = copper.find(element[end]);
    map.set(root, [...(map.get(root) ?? []), element]);
  }
  return map;
};
const drivers = byRoot(kind("driver"), "fromPointId");
const inputs = byRoot(kind("input"), "fromPointId");
const devicesOf = (...classes: readonly string[]) =>
  [...machine.items.values()].filter((i) => i.kind === "device" && classes.includes(i.type.class));

describe("what the machine holds", () => {
  it("has the numbers that a full-size machine is asked for", () => {
    expect(tables.boards.length).toBeGreaterThanOrEqual(50);
    expect(new Set(tables.boards.map((b) => b.type)).size).toBeGreaterThanOrEqual(20);
    expect(devicesOf("switch", "button").length).toBeGreaterThanOrEqual(90);
    expect(devicesOf("lamp").length).toBeGreaterThanOrEqual(150);
    expect(devicesOf("coil").length).toBeGreaterThanOrEqual(26);
    expect(devicesOf("motor").length).toBeGreaterThanOrEqual(4);
    expect(tables.harnesses.length).toBeGreaterThanOrEqual(10);
  });

  it("uses every board type, in-line connector type, wire type, family and harness", () => {
    const unused = (ids: readonly string[], used: ReadonlySet<string>) => ids.filter((id) => !used.has(id));
    const ids = (rows: readonly { readonly id: string }[]) => rows.map((r) => r.id);
    expect(unused(ids(tables.board_types), new Set(tables.boards.map((b) => b.type)))).toEqual([]);
    expect(unused(ids(tables.harnesses), new Set(tables.ends.map((e) => e.harness)))).toEqual([]);
    expect(
      unused(
        tables.connectors.filter((c) => c.board_type === null && c.device_type === null).map((c) => c.id),
        new Set(tables.inlines.map((i) => i.connector)),
      ),
    ).toEqual([]);
    const asked = [
      ...tables.nets.map((n) => n.wire_type ?? ""),
      ...tables.choices.filter((c) => c.kind === "wire-type").map((c) => c.value),
    ];
    expect(unused(ids(tables.wire_types), new Set(asked))).toEqual([]);
    const families = new Set([
      ...tables.connectors.map((c) => c.family),
      ...tables.terminals.map((t) => t.family),
    ]);
    expect(unused(ids(tables.connector_families), families)).toEqual([]);
  });
});

describe("points", () => {
  it("every end names a point and a net, and no point is in two nets", () => {
    const netOf = new Map<string, string>();
    for (const end of tables.ends) {
      expect(machine.points.has(end.point), end.point).toBe(true);
      expect(machine.nets.has(end.net), end.net).toBe(true);
      expect(netOf.get(end.point) ?? end.net, end.point).toBe(end.net);
      netOf.set(end.point, end.net);
    }
  });

  it("every live point is used or declared spare, and never both", () => {
    const used = new Set(tables.ends.map((e) => e.point));
    const spare = new Set(tables.choices.filter((c) => c.kind === "spare").map((c) => c.subject));
    const idle = [...machine.points.values()]
      .filter((p) => p.use === "live" && !used.has(p.id) && !spare.has(p.id))
      .map((p) => p.id);
    expect(idle).toEqual([]);
    expect([...spare].filter((id) => used.has(id) || !machine.points.has(id))).toEqual([]);
    expect(tables.ends.filter((e) => machine.points.get(e.point)?.use !== "live")).toEqual([]);
  });

  it("a housing belongs to one harness, and a harness fits one pinboard", () => {
    const harnessOf = new Map<string, string>();
    const landings = new Map<string, Set<string>>();
    for (const end of tables.ends) {
      const landing = machine.landings.get(machine.points.get(end.point)?.landingId ?? "");
      if (landing === undefined) continue;
      landings.set(end.harness, (landings.get(end.harness) ?? new Set()).add(landing.id));
      if (landing.connector === null) continue;
      expect(harnessOf.get(landing.id) ?? end.harness, landing.id).toBe(end.harness);
      harnessOf.set(landing.id, end.harness);
    }
    for (const [harness, set] of landings) expect(set.size, harness).toBeLessThanOrEqual(60);
  });

  it("a net's ends meet by wires, mated contacts and links alone", () => {
    const root = new Map<string, string>();
    for (const end of tables.ends) {
      const at = copper.find(end.point);
      expect(root.get(end.net) ?? at, `${end.net} at ${end.point}`).toBe(at);
      root.set(end.net, at);
    }
    expect(new Set(root.values()).size).toBe(root.size);
  });

  it("contacts take the wire of their net", () => {
    for (const end of tables.ends) {
      const family = machine.points.get(end.point)?.family;
      const wire = machine.wireTypes.get(machine.nets.get(end.net)?.wire_type ?? "");
      if (family === undefined || wire === undefined) throw new Error(`${end.point} has no family or wire.`);
      const what = `${end.point} takes ${wire.id}`;
      expect(wire.area_mm2, what).toBeGreaterThanOrEqual(family.area_min_mm2);
      expect(wire.area_mm2, what).toBeLessThanOrEqual(family.area_max_mm2);
      expect(wire.od_mm, what).toBeLessThanOrEqual(family.insulation_max_mm);
      expect(wire.od_mm, what).toBeGreaterThanOrEqual(family.insulation_min_mm ?? 0);
      expect(wire.volts, what).toBeGreaterThanOrEqual(machine.nets.get(end.net)?.volts ?? 0);
    }
  });
});

describe("every device can be driven", () => {
  it("each switch reaches one input and that input's common", () => {
    const inputsTaken = new Set<string>();
    for (const contact of kind("contact").filter((e) => isDevice(e, "switch", "button", "sensor"))) {
      const ends = [copper.find(contact.fromPointId), copper.find(contact.toPointId)];
      const relay = kind("coil").some(
        (e) => itemOf(e)?.kind === "board" && ends.includes(copper.find(e.fromPointId)),
      );
      if (relay) continue;
      const reached = ends.flatMap((root) => inputs.get(root) ?? []);
      const input = reached.find(
        (e) => ends.includes(copper.find(e.toPointId)) || contact.fromPointId.startsWith("sn."),
      );
      expect(input, contact.id).toBeDefined();
      expect(inputsTaken.has(input?.id ?? ""), `${contact.id} shares ${input?.id}`).toBe(false);
      inputsTaken.add(input?.id ?? "");
    }
    expect(inputsTaken.size).toBeGreaterThanOrEqual(90);
  });

  /** Checks that a load hangs between a supply's positive and a driver to the same supply's return. */
  const driven = (
    load: PlacedElement,
    plus: string,
    minus: string,
    supplyIds: readonly string[],
    amps: number,
  ) => {
    const found = (drivers.get(copper.find(minus)) ?? []).find((d) => (d.row.amp ?? 0) >= amps - 1e-9);
    expect(found, `${load.id} needs a driver of ${amps} A`).toBeDefined();
    const fits = supplyIds.some((id) => {
      const s = supply(id);
      return (
        fed.together(plus, s?.positive ?? null) && fed.together(found?.toPointId ?? null, s?.negative ?? null)
      );
    });
    expect(fits, `${load.id} is fed from ${supplyIds.join(" or ")}`).toBe(true);
  };

  it("each lamp, alone or in its string, hangs on an output that can carry it", () => {
    const leds = kind("led").filter(
      (e) => isDevice(e, "lamp", "button") || itemOf(e)?.id.startsWith("bd.strip"),
    );
    const sum = new Map<string, number>();
    for (const led of leds) {
      const root = copper.find(led.toPointId);
      sum.set(root, (sum.get(root) ?? 0) + (led.row.amp ?? 0));
    }
    for (const led of leds)
      driven(
        led,
        led.fromPointId,
        led.toPointId,
        ["sup.lamp", "sup.motor"],
        sum.get(copper.find(led.toPointId)) ?? 0,
      );
    expect(leds.length).toBeGreaterThanOrEqual(150);
  });

  it("each LED's resistor gives the current that the type states at 12 V, within 15 %", () => {
    for (const { row } of kind("led").filter((e) => isDevice(e, "lamp", "button"))) {
      const amps = (12 - (row.volt ?? 0)) / (row.ohm ?? 1);
      expect(Math.abs(amps / (row.amp ?? 1) - 1), row.id).toBeLessThanOrEqual(0.15);
    }
  });

  it("the resettable fuse of each lamp feed carries all its lamps at once", () => {
    const sum = new Map<string, number>();
    for (const led of kind("led")) {
      const root = copper.find(led.fromPointId);
      sum.set(root, (sum.get(root) ?? 0) + (led.row.amp ?? 0));
    }
    const feeds = kind("fuse").filter((e) => e.row.control?.startsWith("resettable j"));
    for (const feed of feeds)
      expect(sum.get(copper.find(feed.toPointId)) ?? 0, feed.id).toBeLessThanOrEqual(feed.row.amp ?? 0);
    expect(feeds.length).toBeGreaterThan(10);
  });

  it("each winding hangs on an output that switches its peak current, and loses its supply with the door", () => {
    const windings = kind("coil").filter((e) => isDevice(e, "coil"));
    for (const winding of windings) {
      driven(winding, winding.fromPointId, winding.toPointId, ["sup.48"], 48 / (winding.row.ohm ?? 1));
      expect(doorOpen.together(winding.fromPointId, supply("sup.48")?.positive ?? null), winding.id).toBe(
        false,
      );
    }
    expect(windings.length).toBeGreaterThanOrEqual(26);
  });

  it("each motor has both ends on one bridge, which can turn it both ways", () => {
    const motors = kind("motor");
    const plus = supply("sup.motor")?.positive ?? null;
    const minus = supply("sup.motor")?.negative ?? null;
    for (const motor of motors) {
      for (const end of [motor.fromPointId, motor.toPointId]) {
        const able = kind("driver").filter((d) => (d.row.amp ?? 0) >= (motor.row.amp ?? 0));
        const high = able.find((d) => copper.together(d.toPointId, end) && fed.together(d.fromPointId, plus));
        const low = able.find((d) => copper.together(d.fromPointId, end) && fed.together(d.toPointId, minus));
        expect(high?.itemId, `${motor.id} at ${end}`).toBeDefined();
        expect(high?.itemId).toBe(low?.itemId);
      }
    }
    expect(motors.length).toBeGreaterThanOrEqual(4);
  });

  it("each speaker hangs between the two ends of one amplifier", () => {
    for (const speaker of kind("speaker")) {
      const amplifier = (drivers.get(copper.find(speaker.fromPointId)) ?? []).find((d) =>
        copper.together(d.toPointId, speaker.toPointId),
      );
      expect(amplifier, speaker.id).toBeDefined();
    }
  });

  it("each board's own loads have their supply and its return", () => {
    for (const load of kind("load").filter((e) => itemOf(e)?.kind === "board")) {
      const found = tables.supplies.some(
        (s) =>
          s.volts === load.row.volt &&
          fed.together(load.fromPointId, s.positive) &&
          fed.together(load.toPointId, s.negative),
      );
      expect(found, load.id).toBe(true);
    }
  });
});

describe("bus", () => {
  it("reaches every node once, each with an address of its own, and ends at one board a segment", () => {
    const nodes = tables.boards.filter((b) => b.address !== null);
    expect(new Set(nodes.map((b) => b.address)).size).toBe(nodes.length);
    const segments = new Map<string, typeof nodes>();
    for (const node of nodes) {
      const root = copper.find(`${node.id}:j1.4`);
      expect(copper.together(`${node.id}:j1.5`, `${node.id}:j1.4`)).toBe(false);
      segments.set(root, [...(segments.get(root) ?? []), node]);
    }
    expect(segments.size).toBe(4);
    for (const [root, members] of segments) {
      expect(members.filter((b) => b.terminated).length, root).toBe(1);
      expect(drivers.get(root)?.length, root).toBe(1);
    }
  });

  it("each hop of the pair is a twisted cable with two cores", () => {
    const twisted = tables.cables.filter((c) => c.kind === "twisted");
    for (const cable of twisted)
      expect(tables.cable_cores.filter((c) => c.cable === cable.id).length).toBe(2);
    const nodes = tables.boards.filter((b) => b.address !== null).length;
    // One hop into each node; three more from the hub to in-line connectors, and two from the master to the hub.
    expect(twisted.length).toBe(nodes + 5);
  });
});

describe("safety", () => {
  const panelOf = (point: string) =>
    machine.panels.get(machine.points.get(point)?.place.panelId ?? "")?.purpose ?? "none";

  it("mains stays in the cabinet", () => {
    for (const end of tables.ends) {
      if (machine.nets.get(end.net)?.class === "mains") expect(panelOf(end.point), end.point).toBe("cabinet");
    }
  });

  it("green-and-yellow is stocked for earth wire only", () => {
    for (const net of tables.nets) {
      const colours = machine.wireTypes.get(net.wire_type ?? "")?.colours ?? [];
      expect(colours.includes("GNYE"), net.id).toBe(net.class === "earth");
      expect(
        colours.some((c) => c === "YEGN"),
        net.id,
      ).toBe(false);
    }
  });

  it("the returns meet earth at one board only", () => {
    const ties = kind("resistor").filter((e) => copper.together(e.toPointId, "pe.bar:t1"));
    expect(new Set(ties.map((e) => e.itemId))).toEqual(new Set(["bd.starpoint"]));
    for (const id of ["sup.48", "sup.motor", "sup.lamp", "sup.logic"])
      expect(
        ties.some((e) => copper.together(e.fromPointId, supply(id)?.negative ?? null)),
        id,
      ).toBe(true);
  });

  it("every earth stud is joined to the main bar", () => {
    for (const item of machine.items.values()) {
      if (item.kind !== "device" || item.type.class !== "earth") continue;
      for (const point of machine.points.values())
        if (point.itemId === item.id) expect(copper.together(point.id, "pe.bar:t1"), point.id).toBe(true);
    }
  });

  it("a fuse lies between each supply unit and everything beyond its fuse board", () => {
    const bare = joined(shunt);
    for (const id of ["sup.48", "sup.motor", "sup.lamp", "sup.logic"]) {
      const positive = supply(id)?.positive ?? "";
      for (const end of tables.ends) {
        if (["hs.mains", "hs.dc"].includes(end.harness)) continue;
        expect(bare.together(positive, end.point), end.point).toBe(false);
      }
    }
  });

  it("fuse rows agree with the fuses of the board types", () => {
    for (const row of tables.fuses) {
      const element = kind("fuse").find((e) => e.fromPointId === row.from && e.toPointId === row.to);
      expect(element?.row.amp, row.id).toBe(row.rated_a);
    }
  });
});

describe("places", () => {
  interface Solid {
    readonly id: string;
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
    readonly low: number;
    readonly high: number;
  }

  const boxed = (item: Item, low: number, high: number): Solid => {
    const xs = item.footprint.map((p) => p.xMm);
    const ys = item.footprint.map((p) => p.yMm);
    return {
      id: item.id,
      minX: Math.min(...xs),
      minY: Math.min(...ys),
      maxX: Math.max(...xs),
      maxY: Math.max(...ys),
      low,
      high,
    };
  };

  /** What an item fills on a side of its panel: on its own side, or where it reaches through. */
  const solid = (item: Item, panel: string, side: string): Solid | null => {
    if (item.place.panelId !== panel || item.parentId !== null) return null;
    const near = item.place.side === side;
    const z = item.place.zMm;
    switch (item.kind) {
      case "board":
        return near
          ? boxed(item, item.type.standoff_mm - 3, item.type.standoff_mm + item.type.height_mm)
          : null;
      case "device":
      case "mechanism": {
        const thickness = machine.panels.get(panel)?.thickness_mm ?? 0;
        if (near) return boxed(item, z, z + item.type.height_mm);
        const reach = item.type.reach_mm - thickness;
        return reach > 0 ? boxed(item, 0, reach) : null;
      }
      case "inline":
        return near ? boxed(item, 0, 20) : null;
      case "fastener":
        return null;
    }
  };

  it("every board, in-line connector and earth stud stands on its panel, clear of everything on its side", () => {
    const clashes: string[] = [];
    for (const board of machine.items.values()) {
      if (board.kind !== "board" && board.kind !== "inline" && !board.id.startsWith("pe.")) continue;
      const { panelId, side } = board.place;
      const panel = machine.panels.get(panelId);
      const own = solid(board, panelId, side);
      if (own === null || panel === undefined) throw new Error(`${board.id} stands on no panel.`);
      if (own.minX < 0 || own.minY < 0 || own.maxX > panel.width_mm || own.maxY > panel.height_mm)
        clashes.push(`${board.id} leaves ${panelId}`);
      for (const other of machine.items.values()) {
        const its = other === board ? null : solid(other, panelId, side);
        if (its === null) continue;
        const apart =
          own.minX >= its.maxX ||
          its.minX >= own.maxX ||
          own.minY >= its.maxY ||
          its.minY >= own.maxY ||
          own.low >= its.high ||
          its.low >= own.high;
        if (!apart) clashes.push(`${board.id} meets ${other.id}`);
      }
    }
    expect(clashes).toEqual([]);
  });

  it("nothing of the cabinet and backbox overlaps on its side", () => {
    const clashes: string[] = [];
    for (const panel of tables.panels.filter((p) => p.purpose !== "playfield")) {
      for (const side of ["top", "under"]) {
        const all = [...machine.items.values()].flatMap((item) => solid(item, panel.id, side) ?? []);
        for (const a of all) {
          if (a.minX < 0 || a.minY < 0 || a.maxX > panel.width_mm || a.maxY > panel.height_mm)
            clashes.push(`${a.id} leaves ${panel.id}`);
          for (const b of all) {
            if (a.id >= b.id) continue;
            if (
              a.minX < b.maxX &&
              b.minX < a.maxX &&
              a.minY < b.maxY &&
              b.minY < a.maxY &&
              a.low < b.high &&
              b.low < a.high
            )
              clashes.push(`${a.id} meets ${b.id}`);
          }
        }
      }
    }
    expect(clashes).toEqual([]);
  });
});
