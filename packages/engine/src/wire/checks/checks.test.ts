import { describe, expect, test } from "vitest";
import { createMachine } from "../../testing/book.ts";
import { createWiring, type TestWiring } from "../../testing/wiring.ts";
import { checkWires, wireHarness } from "../index.ts";

const drv = { id: "drv", x: 0, y: 0, connectors: { j1: 2 } };
const one = { id: "one", x: 100, y: 0 } as const;
const two = { id: "two", x: 200, y: 0, takes: 2 } as const;

const found = (wiring: TestWiring): readonly string[] => {
  const machine = createMachine(createWiring(wiring));
  const harnesses = [...machine.harnesses.keys()].map((id) => wireHarness(machine, id));
  return checkWires(machine, harnesses).map((f) => `${f.severity} ${f.rule} ${f.subjects.join(" ")}`);
};

const pair = { p: { h1: ["drv:j1.1", "one:1"] }, q: { h1: ["drv:j1.2", "one:2"] } };
const sound: TestWiring = { boards: [drv], devices: [one], nets: pair };

describe("checkWires", () => {
  test("a sound harness has no findings", () => expect(found(sound)).toEqual([]));

  const cases: readonly (readonly [string, TestWiring, readonly string[]])[] = [
    [
      "conductor and insulation too thick for the contact",
      {
        ...sound,
        netRows: { p: { wire_type: "w14" } },
        more: { wire_types: [{ id: "w14", area_mm2: 2, od_mm: 3, volts: 300 }] },
      },
      [
        "error contact-conductor drv:j1.1 p|h1|drv:j1.1|one:1",
        "error contact-conductor one:1 p|h1|drv:j1.1|one:1",
        "error contact-insulation drv:j1.1 p|h1|drv:j1.1|one:1",
        "error contact-insulation one:1 p|h1|drv:j1.1|one:1",
      ],
    ],
    [
      "two wires in one contact whose copper together is too much",
      {
        devices: [{ ...one, takes: 2 }, two, { id: "end", x: 300, y: 0, takes: 2 }],
        nets: { p: { h1: ["one:1", "two:1", "end:1"] }, q: { h1: ["one:2", "two:2", "end:2"] } },
        choices: [
          { kind: "wire-type", subject: "p|h1|one:1|two:1", value: "thick", held: "pinned" },
          { kind: "wire-type", subject: "p|h1|end:1|two:1", value: "thick", held: "pinned" },
        ],
        more: { wire_types: [{ id: "thick", area_mm2: 1.5, od_mm: 2.4, volts: 300 }] },
      },
      ["error contact-overfull two:1 p|h1|end:1|two:1 p|h1|one:1|two:1"],
    ],
    [
      "a net with one end",
      {
        boards: [drv],
        devices: [one],
        nets: { p: { h1: ["drv:j1.1"] }, q: pair.q },
        choices: [{ kind: "spare", subject: "one:1", held: "pinned" }],
      },
      ["error end-unwired drv:j1.1 p h1", "error net-single-end p drv:j1.1"],
    ],
    [
      "a net in two harnesses that nothing joins",
      { ...sound, devices: [one, two], nets: { ...pair, p: { h1: pair.p.h1, h2: ["two:1", "two:2"] } } },
      ["error net-split p drv:j1.1 two:1"],
    ],
    [
      "a live pin without an end",
      { ...sound, nets: { p: pair.p } },
      ["warning pin-unwired drv:j1.2", "warning pin-unwired one:2"],
    ],
    [
      "a live pin that a choice marks as spare",
      {
        ...sound,
        nets: { p: pair.p },
        choices: ["drv:j1.2", "one"].map((subject) => ({ kind: "spare", subject, held: "pinned" })),
      },
      [],
    ],
    [
      "ends on a key and on a spare cavity",
      {
        ...sound,
        boards: [
          {
            ...drv,
            pins: [
              { connector: "drv-j1", pin: 1, use: "key" },
              { connector: "drv-j1", pin: 2, use: "spare" },
            ],
          },
        ],
      },
      ["error end-on-key drv:j1.1 p", "warning end-on-spare drv:j1.2 q"],
    ],
    [
      "a point in two nets",
      {
        ...sound,
        devices: [one, two],
        nets: { ...pair, r: { h1: ["one:1", "two:1"] }, s: { h1: ["two:2", "drv:j1.2"] } },
      },
      [
        "error contact-overfull drv:j1.2 q|h1|drv:j1.2|one:2 s|h1|drv:j1.2|two:2",
        "error contact-overfull one:1 p|h1|drv:j1.1|one:1 r|h1|one:1|two:1",
        "error point-in-two-nets drv:j1.2 q s",
        "error point-in-two-nets one:1 p r",
      ],
    ],
    [
      "insulation below the net's voltage, and contacts too",
      { ...sound, netRows: { p: { volts: -400 } } },
      [
        "error contact-volts drv:j1.1 p",
        "error contact-volts one:1 p",
        "error wire-voltage p|h1|drv:j1.1|one:1 p",
      ],
    ],
    [
      "mains in wire of a low class",
      {
        ...sound,
        netRows: { p: { class: "mains", volts: 230, wire_type: "low" } },
        more: { wire_types: [{ id: "low", area_mm2: 0.5, od_mm: 1.6, volts: 250 }] },
      },
      ["error wire-mains p|h1|drv:j1.1|one:1 p"],
    ],
    [
      "a feeding contact below the net's current",
      { ...sound, netRows: { p: { amps: 6 } } },
      ["error contact-amps drv:j1.1 p"],
    ],
    [
      "a coil's return and a logic pin in one net",
      {
        ...sound,
        boards: [{ ...drv, pins: [{ connector: "drv-j1", pin: 1, use: "live", class: "logic" }] }],
        netRows: { p: { class: "logic" } },
        more: { elements: [{ id: "coil", device_type: "one", kind: "coil", from: "1", to: "2" }] },
      },
      ["error net-classes-mixed p one:1 drv:j1.1"],
    ],
    [
      "a pin meant for another class",
      { ...sound, boards: [{ ...drv, pins: [{ connector: "drv-j1", pin: 1, use: "live", class: "data" }] }] },
      ["warning pin-class drv:j1.1 p"],
    ],
    [
      "a pinned chain that a contact has no room for",
      {
        devices: [one, two, { id: "end", x: 300, y: 0 }],
        nets: { p: { h1: ["end:1", "one:1", "two:1"] }, q: { h1: ["end:2", "one:2", "two:2"] } },
        choices: [{ kind: "chain", subject: "p|h1", value: "two:1 one:1 end:1 gone:1", held: "pinned" }],
      },
      ["error choice-not-followed p h1 gone:1 p|h1|end:1|one:1"],
    ],
    [
      "an in-line half in two harnesses, and both halves in one",
      {
        boards: [{ ...drv, connectors: { j1: 4 } }],
        devices: [one],
        inlines: [{ id: "x", x: 50, y: 0, ways: 2 }],
        nets: {
          p: { h1: ["drv:j1.1", "x:a.1"], h2: ["one:1", "x:b.1"] },
          q: { h1: ["drv:j1.2", "x:b.2"], h2: ["one:2", "x:a.2"] },
        },
        choices: [{ kind: "spare", subject: "drv:j1", held: "pinned" }],
      },
      [
        "error housing-shared x:a h1 h2",
        "error housing-shared x:b h1 h2",
        "error inline-one-harness x h1 h2",
      ],
    ],
    [
      "an in-line cavity that is wired on one half only",
      {
        ...sound,
        inlines: [{ id: "x", x: 50, y: 0, ways: 2 }],
        nets: { ...pair, p: { h1: ["drv:j1.1", "one:1", "x:a.1"] } },
      },
      ["warning inline-half-open x:b.1 x:a.1"],
    ],
    [
      "a core whose net has no wire between the cable's items",
      {
        ...sound,
        devices: [one, two],
        nets: { ...pair, r: { h1: ["two:1", "two:2"] } },
        more: {
          cables: [{ id: "c", harness: "h1", kind: "twisted", from: "drv", to: "one", od_mm: 3 }],
          cable_cores: [
            { cable: "c", core: 1, net: "p" },
            { cable: "c", core: 2, net: "r" },
          ],
        },
      },
      ["warning core-unwired c r"],
    ],
    [
      "copper that no splice takes",
      {
        devices: ["a", "b", "c"].map((id, i) => ({ id, x: 50 * i, y: 0 })),
        nets: { p: { h1: ["a:1", "b:1", "c:1"] }, q: { h1: ["a:2", "b:2"] } },
        choices: [{ kind: "spare", subject: "c", held: "pinned" }],
        more: {
          connector_families: [
            { id: "s", kind: "splice", area_min_mm2: 1, area_max_mm2: 2, wires_per_contact: 5 },
          ],
        },
      },
      [
        "error splice-area splice:p:h1:1 p|h1|a:1|splice:p:h1:1 p|h1|b:1|splice:p:h1:1 p|h1|c:1|splice:p:h1:1",
      ],
    ],
    [
      "a wire between two contacts that their board joins",
      {
        ...sound,
        boards: [{ ...drv, links: [["j1.1", "j1.2"]] }],
        nets: { p: { h1: ["drv:j1.1", "drv:j1.2"] }, q: { h1: ["one:1", "one:2"] } },
      },
      ["warning wire-loops-back p|h1|drv:j1.1|drv:j1.2 drv:j1.1 drv:j1.2"],
    ],
    [
      "a far end beyond the drop limit",
      { ...sound, netRows: { p: { volts: 5, amps: 4, max_drop_pct: 0.05 } } },
      ["warning chain-drop p h1"],
    ],
  ];

  test.each(cases)("finds %s", (_, wiring, expected) => {
    expect(found(wiring)).toEqual(expected);
  });
});
