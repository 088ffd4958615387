import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { beforeAll, describe, expect, it } from "vitest";
import { Line } from "../../testing/line.ts";
import type { Seen } from "../faults/index.ts";
import { faultFileOf, type OpenedFaultFile, openFaultFile } from "../file/index.ts";
import { FaultFinder, type FaultSession, NO_SESSION, type SessionLook } from "./index.ts";
import { Says } from "./says.ts";

const FOLDER = join(import.meta.dirname, "../../../../../examples/first-light");

let opened: OpenedFaultFile;
let finder: FaultFinder;
let says: Says;

beforeAll(async () => {
  const { book, shop } = await readBook(FOLDER);
  opened = openFaultFile(faultFileOf(new Line().run(book, shop ?? emptyShop(), undefined)));
  finder = new FaultFinder(opened);
  says = new Says(opened.model, opened.table);
});

/** What somebody who looks at everything says of a machine with a fault. */
const seenOf = (c: number): Record<string, Seen> =>
  Object.fromEntries(
    opened.model.functions.map(({ id }, f) => [id, opened.table.classes[c]?.symptoms.get(f) ?? "works"]),
  );

describe("a session of fault finding", () => {
  it("knows nothing while nothing is said to be wrong", () => {
    expect(finder.answer(NO_SESSION)).toEqual({ state: "nothing", causes: [], looks: [] });
    const works = Object.fromEntries(opened.model.functions.map(({ id }) => [id, "works" as const]));
    expect(finder.answer({ seen: works, done: [] }).state).toBe("nothing");
  });

  it("has the class of single faults among the first three, and comes to the fault itself by truthful looks", () => {
    opened.table.classes.forEach(({ suspects, symptoms }, c) => {
      // What is mixed up is seldom told as such, so that likelier causes stay before it.
      if (c % 3 > 0 || [...symptoms.values()].includes("mixed")) return;
      for (const truth of new Set([suspects[0] ?? 0, suspects.at(-1) ?? 0])) {
        let session: FaultSession = { seen: seenOf(c), done: [] };
        let answer = finder.answer(session);
        const named = answer.causes.map(({ parts }) => parts.flat().some(({ suspect }) => suspect === truth));
        expect(named.slice(0, 3)).toContain(true);
        if (named[0] !== true) continue;
        for (let n = 0; answer.state === "looking" && n < 25; n++) {
          const look = answer.looks[0]?.look as SessionLook;
          const isYes = (says.chance(look, [truth]) ?? 0) > 0.5;
          session = {
            ...session,
            done: [...session.done, { what: "looked", look, answer: isYes ? "yes" : "no" }],
          };
          answer = finder.answer(session);
        }
        expect(answer.state).toBe("found");
        expect(answer.causes[0]?.parts[0]?.map(({ suspect }) => suspect)).toContain(truth);
      }
    });
  });

  it("survives one wrong tick and says which one to look at again", () => {
    const c = opened.table.classes.findIndex(
      ({ symptoms }) => symptoms.size >= 3 && symptoms.size < opened.model.functions.length,
    );
    const seen = seenOf(c);
    const wrong = opened.model.functions.findIndex((_, f) => !opened.table.classes[c]?.symptoms.has(f));
    seen[opened.model.functions[wrong]?.id ?? ""] = "dead";
    const { causes } = finder.answer({ seen, done: [] });
    const single = causes.find(({ parts }) => parts.length === 1);
    expect(single?.parts[0]?.map(({ suspect }) => suspect)).toContain(opened.table.classes[c]?.suspects[0]);
    expect(single?.against).toEqual([wrong]);
  });

  it("puts a look before a measurement and ohms before volts, and asks nothing twice", () => {
    let session: FaultSession = { seen: seenOf(0), done: [] };
    const turns: Record<string, number> = { try: 0, inspect: 0, reseat: 0, ohms: 1, part: 1, volts: 2 };
    for (let n = 0; n < 10; n++) {
      const { looks } = finder.answer(session);
      const next = looks[0];
      if (next === undefined) break;
      const most = Math.max(...looks.map(({ bits }) => bits));
      for (const other of looks)
        if ((turns[other.look.kind] ?? 9) < (turns[next.look.kind] ?? 9))
          expect(other.bits).toBeLessThan(most / 4);
      expect(session.done.flatMap((one) => (one.what === "looked" ? [one.look] : []))).not.toContainEqual(
        next.look,
      );
      session = {
        ...session,
        done: [...session.done, { what: "looked", look: next.look, answer: "unsure" }],
      };
    }
    expect(session.done.length).toBeGreaterThan(2);
  });

  it("lets what was mended in vain go, and ends when it helped", () => {
    const session: FaultSession = { seen: seenOf(0), done: [] };
    const first = finder.answer(session).causes[0]?.parts[0]?.[0]?.suspect ?? 0;
    const suspect = opened.table.suspects[first]?.id ?? "";
    const vain = finder.answer({ ...session, done: [{ what: "mended", suspect, helped: false }] });
    expect(vain.causes[0]?.parts[0]?.[0]?.suspect).not.toBe(first);
    expect(finder.answer({ ...session, done: [{ what: "mended", suspect, helped: true }] }).state).toBe(
      "mended",
    );
  });

  it("never measures at the mains", () => {
    const nodes = new Set(opened.file.mains.map((n) => opened.file.nodes[n]));
    opened.table.classes.forEach((_, c) => {
      if (c % 3 > 0) return;
      for (const { look } of finder.answer({ seen: seenOf(c), done: [] }).looks) {
        if (look.kind === "ohms") expect([nodes.has(look.a), nodes.has(look.b)]).toEqual([false, false]);
        if (look.kind === "volts") expect(nodes.has(look.node)).toBe(false);
      }
    });
  });
});
