import { describe, expect, it } from "vitest";
import { canRecall, csvText, isAsked, paramsOf, queryOf, recallName, serverQuery } from "./trace-query.ts";

const query = (search: string) => queryOf(new URLSearchParams(search));

describe("what is traced", () => {
  it("is read from an address and written as it was", () => {
    const search = "part=p.res-1k&lot=L7&revision=%4012";
    expect(new URLSearchParams(paramsOf(query(`${search}&other=1`))).toString()).toBe(search);
    expect(isAsked(query(search))).toBe(true);
    expect(isAsked(query("part=%20"))).toBe(false);
  });

  it("takes the last day with all of it", () => {
    const asked = serverQuery(query("person=ann&from=2027-01-31&to=2027-01-31"));
    const [from, to] = [Date.parse(asked?.from ?? ""), Date.parse(asked?.to ?? "")];
    expect((to - from) / 3_600_000).toBe(24);
    expect(asked?.person).toBe("ann");
    expect(serverQuery(query("part=a&from=soon"))).toEqual({ part: "a" });
  });

  it("can be called back only by part, lot, type and revision", () => {
    expect(canRecall(query("part=a&lot=b"))).toBe(true);
    expect(canRecall(query("part=a&person=ann"))).toBe(false);
    expect(canRecall(query(""))).toBe(false);
    expect(recallName(new Date("2027-01-04T08:00:00Z"), "rc-x0123abcd")).toBe("rc-20270104-abcd");
  });

  it("writes cells that a spreadsheet reads as text", () => {
    expect(
      csvText([
        ["m-000001", 'says "no"'],
        ["=1+1", "a,b"],
      ]),
    ).toBe('"m-000001","says ""no"""\r\n"\'=1+1","a,b"\r\n');
  });
});
