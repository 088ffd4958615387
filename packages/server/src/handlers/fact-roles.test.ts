import { atLeast, type Fact, type FactBody, factBodySchema, ROLES, type Role } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Tablet } from "../testing/tablet.ts";
import { TestServer, type Visitor } from "../testing/test-server.ts";

const unit = "b-000001";
const why = "because";

/** One fact of every kind, and of both kinds of alternates, with the least role that may write it; null: nobody. */
const FACTS: readonly (readonly [FactBody, Role | null])[] = [
  [{ kind: "begun", unit, what: "board", type: "bt.x", book: "small", revision: "@1", options: [] }, null],
  [{ kind: "fitted", unit, into: "m-000001", place: "bd.1" }, "builder"],
  [{ kind: "removed", unit, from: "m-000001", place: "bd.1", why }, "builder"],
  [{ kind: "lot-used", unit, part: "el.a", lot: "L7" }, "builder"],
  [{ kind: "step-done", unit, step: "st.1" }, "builder"],
  [{ kind: "reading", unit, test: "t.1", good: true }, "builder"],
  [{ kind: "noted", unit, says: why }, "builder"],
  [{ kind: "defect", unit, defect: "d-1", what: "scratch", says: "", where: {} }, "builder"],
  [{ kind: "mended", unit, defect: "d-1", cause: "fall", says: "" }, "builder"],
  [{ kind: "handed", unit, stage: "test" }, "builder"],
  [{ kind: "sent", unit, transport: "tr-1", to: "works" }, "builder"],
  [{ kind: "arrived", unit, transport: "tr-1", site: "works" }, "builder"],
  [{ kind: "alternate", unit, part: "el.a", instead: "el.b", allowed: "book", why }, "builder"],
  [{ kind: "alternate", unit, part: "el.a", instead: "el.b", allowed: "concession", why }, "lead"],
  [{ kind: "override", unit, gate: "step", of: "st.1", why }, "lead"],
  [{ kind: "released", unit, heads: [] }, null],
  [{ kind: "recall", recall: "rc-1", part: "el.a", why }, "lead"],
  [{ kind: "recall-ended", recall: "rc-1", why }, "lead"],
  [
    {
      ...{ kind: "problem", problem: "pb-1", book: "small", about: [{ kind: "item", id: "sw.1" }] },
      ...{ from: "build", says: why },
    },
    "builder",
  ],
  [{ kind: "problem-note", problem: "pb-1", did: "seen", says: "" }, "builder"],
  [{ kind: "problem-note", problem: "pb-1", did: "decided", says: why }, "lead"],
  [{ kind: "problem-ended", problem: "pb-1", how: "no-change", why }, "lead"],
  [{ kind: "correction", stream: "somewhere", seq: 1, why }, "builder"],
];

describe("facts", () => {
  let server: TestServer;
  const visitors = new Map<Role, { readonly visitor: Visitor; readonly id: string }>();
  let streams = 0;
  beforeAll(async () => {
    server = await TestServer.start();
    const owner = await server.owner();
    for (const role of ROLES) {
      const visitor = role === "owner" ? owner : await server.person(owner, `one ${role}`, role);
      visitors.set(role, { visitor, id: (await visitor.look()).person?.id ?? "" });
    }
  }, 60_000);
  afterAll(() => server.close());

  const of = (role: Role) => {
    const found = visitors.get(role);
    if (found === undefined) throw new Error(`There is one ${role}.`);
    return found;
  };
  /** Why a fact that one role wrote and another sent does not count; null: it does. */
  const asideOf = async (body: FactBody, writer: Role, sender: Role): Promise<string | null> => {
    const fact: Fact = new Tablet(`t-${++streams}`, of(writer).id).write(body);
    const answer = (await of(sender).visitor.post("/api/facts", { facts: [fact] })) as {
      aside: { why: string }[];
    };
    return answer.aside[0]?.why ?? null;
  };

  it("of every kind are tried", () => {
    const kinds = factBodySchema.options.map((option) => option.shape.kind.value);
    expect(new Set(FACTS.map(([{ kind }]) => kind))).toEqual(new Set(kinds));
  });

  for (const [body, least] of FACTS) {
    const name =
      "allowed" in body
        ? `${body.kind} by ${body.allowed}`
        : "did" in body
          ? `${body.kind} of what was ${body.did}`
          : body.kind;
    it(`${name} count from ${least ?? "nobody"} and, where a lead must write them, only when he sends them himself`, async () => {
      for (const writer of ROLES) {
        for (const sender of ROLES.filter((role) => atLeast(role, "builder"))) {
          const found = await asideOf(body, writer, sender);
          const isOwn = writer === sender;
          const may =
            least !== null &&
            atLeast(writer, least) &&
            (least === "builder" ? body.kind !== "correction" || isOwn || !atLeast(writer, "lead") : isOwn);
          const expected = may ? null : least === null ? "server-only" : "not-allowed";
          expect([writer, sender, found]).toEqual([writer, sender, expected]);
        }
      }
      const fact = new Tablet(`t-${++streams}`, of("viewer").id).write(body);
      const refused = await of("viewer").visitor.refusal("/api/facts", {
        method: "POST",
        body: { facts: [fact] },
      });
      expect(refused).toMatchObject({ status: 403, code: "not-allowed" });
    });
  }

  it("that only the server writes are not taken in its own stream either", async () => {
    for (const [body] of FACTS.slice(0, 2)) {
      const fact = new Tablet("server", of("owner").id).write(body);
      const answer = (await of("owner").visitor.post("/api/facts", { facts: [fact] })) as {
        aside: { why: string }[];
      };
      expect(answer.aside[0]?.why).toBe("server-only");
    }
  });
});
