import type { BookRow } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import type { Wire } from "../../model/index.ts";
import { createMachine } from "../../testing/book.ts";
import { electricNetwork } from "./network.ts";
import { usageOf } from "./usage.ts";

type Element = Partial<BookRow<"elements">> & { readonly from: string; readonly to: string };

const wireType = { id: "w", area_mm2: 0.5 } as Wire["wireType"];

/** A network of devices, each with elements between its own terminals, and wires as `a b`. */
function network(
  devices: Readonly<Record<string, readonly Element[]>>,
  joined: readonly string[],
  activity: readonly Partial<BookRow<"activity">>[] = [],
  groups: readonly Partial<BookRow<"groups">>[] = [],
) {
  const names = Object.keys(devices);
  const place = { panel: "pf", side: "under", x_mm: 0, y_mm: 0 } as const;
  const machine = createMachine({
    panels: [{ id: "pf", purpose: "playfield", width_mm: 500, height_mm: 1000, thickness_mm: 13 }],
    connector_families: [{ id: "f", kind: "lug", rated_a: 9, contact_mohm: 10, wires_per_contact: 4 }],
    device_types: names.map((id) => ({ id: `t.${id}`, class: "other", width_mm: 9, depth_mm: 9 })),
    terminals: names.flatMap((id) =>
      [...new Set(devices[id]?.flatMap(({ from, to }) => [from, to]))].map((terminal) => ({
        device_type: `t.${id}`,
        terminal,
        family: "f",
      })),
    ),
    devices: names.map((id) => ({ ...place, id, type: `t.${id}` })),
    elements: names.flatMap((id) =>
      (devices[id] ?? []).map((row, n) => ({ id: `${row.kind}${n}`, ...row, device_type: `t.${id}` })),
    ),
    activity,
    groups,
  });
  const wires = joined.map((text, n): Wire => {
    const [a = "", b = ""] = text.split(" ");
    return {
      id: `w${n}`,
      number: n,
      netId: "n",
      netClass: "coil",
      harnessId: "h",
      a,
      b,
      wireType,
      cableId: null,
      core: null,
    };
  });
  return electricNetwork(machine, wires);
}

const PSU: readonly Element[] = [{ kind: "source", from: "p", to: "n", volt: 12 }];
const ids = (parts: readonly { readonly id: string }[]): readonly string[] =>
  parts.map(({ id }) => id).sort();

describe("feeds, traced through nets", () => {
  it("runs a motor in a bridge of four drivers by one high and one low one, its first point positive", () => {
    const bridge: readonly Element[] = [
      { kind: "driver", from: "p", to: "a" },
      { kind: "driver", from: "a", to: "n" },
      { kind: "driver", from: "p", to: "b" },
      { kind: "driver", from: "b", to: "n" },
    ];
    const motor: readonly Element[] = [{ kind: "motor", from: "x", to: "y", ohm: 5, volt: 12, amp: 0.4 }];
    const { units, islands } = network(
      { psu: PSU, bridge, motor },
      ["psu:p bridge:p", "psu:n bridge:n", "bridge:a motor:x", "bridge:b motor:y"],
      [{ item: "motor", duty_pct: 30 }],
    );
    expect(units.units).toHaveLength(1);
    expect(ids(units.units[0]?.switches ?? [])).toEqual(["bridge:driver0", "bridge:driver3"]);
    expect(islands).toHaveLength(1);
  });

  it("closes a relay's contact for the board behind it, and leaves a switch to an input open", () => {
    const relay: readonly Element[] = [{ kind: "contact", from: "in", to: "out", normally: "open" }];
    const board: readonly Element[] = [
      { kind: "load", from: "p", to: "n", amp: 0.2 },
      { kind: "input", from: "s", to: "n" },
    ];
    const lever: readonly Element[] = [{ kind: "contact", from: "a", to: "b", normally: "open" }];
    const { units, unfedIds } = network({ psu: PSU, relay, board, lever }, [
      "psu:p relay:in",
      "relay:out board:p",
      "psu:n board:n",
      "board:s lever:a",
      "board:n lever:b",
    ]);
    expect([...units.closed]).toEqual(["relay:contact0"]);
    expect(units.steady.map(({ load }) => load.id)).toEqual(["board:load0"]);
    expect(unfedIds).toEqual([]);
  });

  it("lights two LEDs in series by the one driver at the end of the string, all the time", () => {
    const led: readonly Element[] = [{ kind: "led", from: "a", to: "k", volt: 2, ohm: 50 }];
    const board: readonly Element[] = [{ kind: "driver", from: "d", to: "n" }];
    const { units, unfedIds } = network({ psu: PSU, one: led, two: led, board }, [
      "psu:p one:a",
      "one:k two:a",
      "two:k board:d",
      "psu:n board:n",
    ]);
    expect(unfedIds).toEqual([]);
    expect(units.units).toEqual([]);
    expect(ids(units.steady.map(({ load }) => load))).toEqual(["one:led0", "two:led0"]);
    expect([...units.closed]).toEqual(["board:driver0"]);
  });

  it("tells of a load with one end in the air, and of an LED the wrong way round", () => {
    const coil: readonly Element[] = [{ kind: "coil", from: "a", to: "b", ohm: 10 }];
    const led: readonly Element[] = [{ kind: "led", from: "a", to: "k", volt: 2, ohm: 500 }];
    const { unfedIds } = network({ psu: PSU, coil, led }, ["psu:p coil:a", "psu:n led:a", "psu:p led:k"]);
    expect(unfedIds).toEqual(["coil:coil0", "led:led0"]);
  });

  it("pulls a flipper with both windings and holds it with the one of high resistance", () => {
    const coil: readonly Element[] = [
      { kind: "coil", from: "c", to: "pull", ohm: 4 },
      { kind: "coil", from: "c", to: "hold", ohm: 120 },
    ];
    const board: readonly Element[] = [
      { kind: "driver", from: "d1", to: "n" },
      { kind: "driver", from: "d2", to: "n" },
    ];
    const { units } = network(
      { psu: PSU, coil, board },
      ["psu:p coil:c", "coil:pull board:d1", "coil:hold board:d2", "psu:n board:n"],
      [{ item: "coil", pulse_ms: 40, repeat_ms: 200, hold_ms: 5000, duty_pct: 30 }],
    );
    expect(ids(units.units[0]?.switches ?? [])).toEqual(["board:driver0", "board:driver1"]);
    expect(ids(units.units[0]?.holdSwitches ?? [])).toEqual(["board:driver1"]);
  });

  it("switches items that share a driver as one, and counts it in every group of either", () => {
    const coil: readonly Element[] = [{ kind: "coil", from: "a", to: "b", ohm: 10 }];
    const board: readonly Element[] = [
      { kind: "driver", from: "d", to: "n" },
      { kind: "driver", from: "e", to: "n" },
    ];
    const { units } = network(
      { psu: PSU, c1: coil, c2: coil, c3: coil, board },
      [
        "psu:p c1:a",
        "psu:p c2:a",
        "psu:p c3:a",
        "c1:b board:d",
        "c2:b board:d",
        "c3:b board:e",
        "psu:n board:n",
      ],
      [{ item: "c1", duty_pct: 10 }, { item: "c2", duty_pct: 20 }, { item: "c3" }],
      [{ id: "g", most_on: 1, items: ["c2", "c3"] }],
    );
    expect(units.units.map(({ itemIds }) => itemIds)).toEqual([["c1", "c2"], ["c3"]]);
    expect(units.units[0]?.usage.pulseShare).toBe(0.2);
    expect(units.caps).toEqual([{ members: [0, 1], most: 1 }]);
  });
});

describe("usageOf", () => {
  const row = (cells: Partial<BookRow<"activity">>): BookRow<"activity"> => ({
    item: "c",
    pulse_ms: null,
    repeat_ms: null,
    hold_ms: null,
    hold_duty_pct: null,
    duty_pct: null,
    timeout_ms: null,
    ...cells,
  });

  it("takes all of the duty as pulse without a hold, and all of the time without a duty", () => {
    expect(usageOf(row({ pulse_ms: 30, repeat_ms: 100, duty_pct: 5 })).pulseShare).toBe(0.05);
    expect(usageOf(row({})).pulseShare).toBe(1);
  });

  it("pulses as often as it may, and holds for the rest of the duty", () => {
    const usage = usageOf(
      row({ pulse_ms: 60, repeat_ms: 500, hold_ms: 10000, hold_duty_pct: 35, duty_pct: 25 }),
    );
    expect(usage.pulseShare).toBeCloseTo(0.12, 12);
    expect(usage.holdShare).toBeCloseTo(0.13, 12);
    expect(usage.holdDuty).toBe(0.35);
  });
});
