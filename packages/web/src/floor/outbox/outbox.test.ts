import { type AsideReason, type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Unreachable } from "../../api/call.ts";
import { MemoryStore } from "./memory-store.ts";
import { Outbox, sha256 } from "./outbox.ts";
import { Sender, type SenderHost, type SendState } from "./sender.ts";

const noted = (says: string): FactBody => ({ kind: "noted", unit: "b-000001", says });
const NOW = "2027-01-04T08:00:00.000Z";

/** A server that keeps each link once, behind the one before, and can be put back to an earlier day. */
class FakeServer {
  facts: Fact[] = [];
  requests = 0;

  take(facts: readonly Fact[]) {
    this.requests += 1;
    const aside: { stream: string; seq: number; why: AsideReason }[] = [];
    for (const fact of facts) {
      const own = this.facts.filter(({ stream }) => stream === fact.stream);
      const known = own.find(({ seq }) => seq === fact.seq);
      if (known?.hash === fact.hash) continue;
      const why = known !== undefined ? "fork" : fact.seq !== own.length + 1 ? "gap" : null;
      if (why === null) this.facts.push(fact);
      else aside.push({ stream: fact.stream, seq: fact.seq, why });
    }
    return { heads: this.heads(), aside };
  }

  heads(): { stream: string; seq: number }[] {
    const heads = new Map(this.facts.map(({ stream, seq }) => [stream, seq]));
    return [...heads].map(([stream, seq]) => ({ stream, seq }));
  }
}

interface Bench {
  readonly store: MemoryStore;
  readonly outbox: Outbox;
  readonly server: FakeServer;
  readonly sender: Sender;
  readonly states: SendState[];
}

function bench(broken: () => "no" | "before" | "after" = () => "no"): Bench {
  const store = new MemoryStore();
  const server = new FakeServer();
  const states: SendState[] = [];
  const host: SenderHost = {
    send: async (facts) => {
      const how = broken();
      if (how === "before") throw new Unreachable("away");
      const answer = server.take(facts);
      if (how === "after") throw new Unreachable("the answer was lost");
      return answer;
    },
    heads: async () => {
      if (broken() !== "no") throw new Unreachable("away");
      return server.heads();
    },
    now: () => NOW,
    later: () => () => undefined,
    told: (state) => states.push(state),
  };
  return { store, server, states, outbox: new Outbox(store, () => NOW), sender: new Sender(store, host) };
}

const said = (facts: readonly Fact[]): readonly string[] =>
  facts.map(({ body }) => (body.kind === "noted" ? body.says : body.kind));

describe("outbox", () => {
  it("links each fact to the one before by the hash of its text", async () => {
    const { outbox } = bench();
    const facts = [
      ...(await outbox.write([noted("a"), noted("b")], "bo")),
      ...(await outbox.write([noted("c")], "bo")),
    ];
    expect(facts.map(({ seq }) => seq)).toEqual([1, 2, 3]);
    let before = NO_FACT;
    for (const fact of facts) {
      expect(fact.before).toBe(before);
      expect(await sha256(factText(fact))).toBe(fact.hash);
      before = fact.hash;
    }
  });

  it("hashes as FIPS 180-4 does: the hash of “abc”", async () => {
    // NIST, FIPS 180-4 example for SHA-256, one block message "abc".
    expect(await sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  });

  it("keeps the chain whole when two windows write at once", async () => {
    const { store, server, sender } = bench();
    const windows = [new Outbox(store, () => NOW), new Outbox(store, () => NOW)];
    await Promise.all(
      Array.from({ length: 20 }, (_, i) => windows[i % 2]?.write([noted(String(i))], "bo") ?? null),
    );
    await sender.send();
    expect(server.facts.map(({ seq }) => seq)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1));
  });

  it("refuses what is no fact before it is kept", async () => {
    const { outbox, store } = bench();
    await expect(outbox.write([noted("")], "bo")).rejects.toThrow();
    expect(await store.all()).toEqual([]);
    await outbox.write([noted("good")], "bo");
    expect((await store.all()).map(({ fact }) => fact.seq)).toEqual([1]);
  });

  it("loses nothing, doubles nothing and keeps the order, whenever the network or its answer is lost", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.oneof(fc.constant("write"), fc.constant("send")), { maxLength: 40 }),
        fc.infiniteStream(fc.constantFrom("no", "before", "after")),
        async (deeds, luck) => {
          let isFair = false;
          const { outbox, sender, server } = bench(() => (isFair ? "no" : (luck.next().value ?? "no")));
          const written: string[] = [];
          for (const deed of deeds) {
            if (deed === "send") await sender.send();
            else {
              written.push(String(written.length));
              await outbox.write([noted(written.at(-1) ?? "")], "bo");
            }
          }
          isFair = true;
          await sender.send();
          expect(said(server.facts)).toEqual(written);
        },
      ),
      { seed: 23, numRuns: 60 },
    );
  });

  it("sends what a server lost that was put back to an earlier day", async () => {
    const { outbox, sender, server, store } = bench();
    await outbox.write([noted("a"), noted("b"), noted("c")], "bo");
    await sender.send();
    server.facts = server.facts.slice(0, 1);
    await outbox.write([noted("d")], "bo");
    await sender.send();
    expect(said(server.facts)).toEqual(["a", "b", "c", "d"]);
    expect((await store.all()).every(({ sentAt, why }) => sentAt !== null && why === null)).toBe(true);
  });

  it("begins a new stream when its own was written to by something else", async () => {
    const { outbox, sender, server, store } = bench();
    const [first] = await outbox.write([noted("mine")], "bo");
    if (first === undefined) throw new Error("Nothing was written.");
    server.facts.push({ ...first, hash: "f".repeat(64) });
    await sender.send();
    expect((await store.all()).map(({ why }) => why)).toEqual(["fork"]);
    const [next] = await outbox.write([noted("after")], "bo");
    expect([next?.seq, next?.before]).toEqual([1, NO_FACT]);
    await sender.send();
    expect(said(server.facts)).toEqual(["mine", "after"]);
  });

  it("tells when nobody answers", async () => {
    const { outbox, sender, states } = bench(() => "before");
    await outbox.write([noted("a")], "bo");
    await sender.send();
    expect(states).toEqual([{ state: "offline" }]);
  });
});
