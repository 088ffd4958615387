import fc from "fast-check";
import type { SomeTables } from "./book.ts";
import type { TestBoard, TestDevice, TestWiring } from "./wiring.ts";

/** Machines of a few boards and devices whose contacts are dealt out to nets of one harness, `h1`. */
export const arbitraryWiring: fc.Arbitrary<TestWiring> = fc
  .record({
    boards: fc.array(
      fc.record({
        x: fc.integer({ min: 0, max: 400 }),
        y: fc.integer({ min: 0, max: 900 }),
        ways: fc.integer({ min: 1, max: 8 }),
        linked: fc.boolean(),
      }),
      { maxLength: 4 },
    ),
    devices: fc.array(
      fc.record({
        x: fc.integer({ min: 0, max: 400 }),
        y: fc.integer({ min: 0, max: 900 }),
        takes: fc.constantFrom<(1 | 2)[]>(1, 2),
      }),
      { minLength: 2, maxLength: 9 },
    ),
    deal: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 50, maxLength: 50 }),
  })
  .map(({ boards, devices, deal }): TestWiring => {
    const made = boards.map(
      (b, i): TestBoard => ({
        id: `b${i}`,
        x: b.x,
        y: b.y,
        connectors: { j1: b.ways },
        // A linked board is dealt to one net as a whole, since a link joins its points already.
        links: b.linked
          ? Array.from({ length: b.ways - 1 }, (_, n) => [`j1.${n + 1}`, `j1.${n + 2}`] as const)
          : [],
      }),
    );
    const placed = devices.map((d, i): TestDevice => ({ id: `d${i}`, ...d }));
    const nets: Record<string, { h1: string[] }> = {};
    let card = 0;
    const net = (): string => `n${deal[card++ % deal.length] ?? 0}`;
    const put = (id: string, point: string): void => {
      const row = nets[id] ?? { h1: [] };
      row.h1.push(point);
      nets[id] = row;
    };
    made.forEach((board, i) => {
      const whole = net();
      const ways = board.connectors.j1 ?? 0;
      for (let pin = 1; pin <= ways; pin++) put(boards[i]?.linked ? whole : net(), `${board.id}:j1.${pin}`);
    });
    for (const device of placed) for (const t of ["1", "2"]) put(net(), `${device.id}:${t}`);
    return { boards: made, devices: placed, nets };
  });

/** The same tables with the rows of each in another order, which a number decides. */
export function shuffled(tables: SomeTables, seed: number): SomeTables {
  let state = (seed % 2147483646) + 1;
  const next = (): number => {
    // The minimal standard generator of Park and Miller.
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return Object.fromEntries(
    Object.entries(tables).map(([name, rows]) => {
      const keyed = rows.map((row) => ({ row, key: next() }));
      return [name, keyed.sort((a, b) => a.key - b.key).map((k) => k.row)];
    }),
  );
}
