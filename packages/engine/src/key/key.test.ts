import { describe, expect, test } from "vitest";
import type { Machine } from "../model/index.ts";
import { createMachine, type SomeTables } from "../testing/book.ts";
import { createHarnessResult } from "../testing/result.ts";
import { createWiring, type TestBoard, type TestInline, type TestWiring } from "../testing/wiring.ts";
import { type KeyPlan, keyConnectors } from "./index.ts";

const plan = (machine: Machine): KeyPlan =>
  keyConnectors(
    machine,
    [...machine.harnesses.keys()].map((id) => createHarnessResult(machine, id)),
  );

const board = (id: string, x: number, y: number, ways: number): TestBoard => ({
  id,
  x,
  y,
  connectors: { j1: ways },
});

/** A main board at the left, and two boards of two ways, usually near each other at the right. */
const twins = (netRows: TestWiring["netRows"], leftX = 400): TestWiring => ({
  boards: [board("main", 50, 500, 4), board("left", leftX, 560, 2), board("right", 400, 600, 2)],
  nets: {
    p: { h1: ["main:j1.1", "left:j1.1"] },
    q: { h1: ["main:j1.2", "left:j1.2"] },
    r: { h1: ["main:j1.3", "right:j1.1"] },
    s: { h1: ["main:j1.4", "right:j1.2"] },
  },
  ...(netRows === undefined ? {} : { netRows }),
});

const said = (key: KeyPlan): readonly string[] =>
  key.findings.map((f) => `${f.severity} ${f.rule} ${f.subjects.join(" ")}`);

describe("keyConnectors", () => {
  test("a supply plug that reaches a logic header is an error", () => {
    const wiring = twins({ p: { class: "coil", volts: 48 }, r: { class: "logic" } });
    const { findings, swaps } = plan(createMachine(createWiring(wiring)));
    expect(findings.map((f) => [f.rule, f.severity, f.subjects, f.numbers.plug_net, f.numbers.pins])).toEqual(
      [["plug-swap", "error", ["left:j1", "right:j1"], "p", 2]],
    );
    // Keys of boards live on their types: nothing to choose, so the bound is met.
    expect(swaps).toEqual({ value: 1, lowerBound: 1, gap: 0 });
  });

  test("plugs of one function that change places are a note, of unlike function a warning", () => {
    expect(said(plan(createMachine(createWiring(twins(undefined)))))).toEqual([
      "note plugs-alike left:j1 right:j1",
    ]);
    const unlike = twins({ r: { class: "switch" } });
    expect(said(plan(createMachine(createWiring(unlike))))).toEqual(["warning plug-swap left:j1 right:j1"]);
  });

  test("a plug reaches as far as its bundle is free, to the last place where it is held", () => {
    const apart = twins({ p: { class: "coil" } }, 60);
    expect(said(plan(createMachine(createWiring(apart))))).toEqual(["error plug-swap left:j1 right:j1"]);
    const saddle = { id: "w.right", panel: "pf", side: "under", hold: "saddle" } as const;
    expect(said(plan(createMachine(createWiring({ ...apart, more: { waypoints: [saddle] } }))))).toEqual([]);
  });

  test("different keys on the board types keep plugs apart", () => {
    const pins = [
      { connector: "left-j1", pin: 1, use: "key" as const },
      { connector: "right-j1", pin: 3, use: "key" as const },
    ];
    const wiring: TestWiring = {
      boards: [
        board("main", 50, 500, 4),
        { ...board("left", 400, 560, 3), pins: pins.slice(0, 1) },
        { ...board("right", 400, 600, 3), pins: pins.slice(1) },
      ],
      nets: {
        p: { h1: ["main:j1.1", "left:j1.2"] },
        q: { h1: ["main:j1.2", "left:j1.3"] },
        r: { h1: ["main:j1.3", "right:j1.1"] },
        s: { h1: ["main:j1.4", "right:j1.2"] },
      },
      netRows: { p: { class: "coil" } },
    };
    const key = plan(createMachine(createWiring(wiring)));
    expect(said(key)).toEqual([]);
    expect(key.keys.get("right:j1")).toEqual([3]);
  });

  const bench = (count: number, ways: number): TestWiring => {
    const ids = Array.from({ length: count }, (_, i) => i + 1);
    return {
      boards: [board("main", 300, 500, 2 * count), board("far", 320, 500, 2 * count)],
      inlines: ids.map((i): TestInline => ({ id: `x${i}`, x: 400, y: 400 + 40 * i, ways })),
      nets: Object.fromEntries(
        ids.flatMap((i) => [
          [`p${i}`, { h1: [`main:j1.${2 * i - 1}`, `x${i}:a.1`], h2: [`x${i}:b.1`, `far:j1.${2 * i - 1}`] }],
          [`q${i}`, { h1: [`main:j1.${2 * i}`, `x${i}:a.2`], h2: [`x${i}:b.2`, `far:j1.${2 * i}`] }],
        ]),
      ),
    };
  };

  test("in-line connectors get different keys in cavities that neither half uses", () => {
    const { keys, swaps, findings } = plan(createMachine(createWiring(bench(3, 5))));
    const own = ["x1:a", "x2:a", "x3:a"].map((id) => keys.get(id)?.[0]);
    expect([...own].sort()).toEqual([3, 4, 5]);
    expect(keys.get("x1:b")).toEqual(keys.get("x1:a"));
    expect(swaps).toEqual({ value: 0, lowerBound: 0, gap: 0 });
    expect(
      findings.filter((f) => f.rule === "plug-swap" && f.subjects.every((s) => s.startsWith("x"))),
    ).toEqual([]);
  });

  test("with too few spare cavities as few as possible can be exchanged", () => {
    // Three connectors, two spare cavities: one pair is left alike at least.
    expect(plan(createMachine(createWiring(bench(3, 4)))).swaps.value).toBe(1);
  });

  test("a pinned key stays, and one on a used cavity is told of", () => {
    const choices = [{ kind: "key" as const, subject: "x2", value: "3", held: "pinned" as const }];
    const { keys, swaps } = plan(createMachine(createWiring({ ...bench(3, 5), choices })));
    expect(keys.get("x2:a")).toEqual([3]);
    expect(swaps.value).toBe(0);
    const wrong = [{ kind: "key" as const, subject: "x2", value: "1", held: "pinned" as const }];
    expect(said(plan(createMachine(createWiring({ ...bench(3, 5), choices: wrong }))))).toContain(
      "error choice-not-followed x2",
    );
  });

  test("without a latch a plug can sit one pin aside, turned round, or on a longer header", () => {
    const tables = createWiring(twins({ p: { class: "coil", volts: 48 }, r: { class: "logic" } }));
    const open: SomeTables = {
      ...tables,
      connector_families: tables.connector_families?.map((f) => ({ ...f, latch: false })) ?? [],
    };
    expect(said(plan(createMachine(open)))).toEqual([
      "warning plug-offset left:j1",
      "warning plug-offset main:j1",
      "warning plug-on-longer left:j1 main:j1",
      "warning plug-on-longer right:j1 main:j1",
      "warning plug-reversed left:j1",
      "warning plug-reversed main:j1",
      "error plug-swap left:j1 right:j1",
    ]);
  });
});
