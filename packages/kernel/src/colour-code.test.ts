import { describe, expect, it } from "vitest";
import { COLOUR_CODES, colourOf, joinBaseStripe, joinInTableOrder, splitColours } from "./colour-code.ts";
import { csvRows } from "./testing/csv-rows.ts";

const codes = (text: string) => splitColours(text)?.map((c) => c.code) ?? null;

describe("colour codes", () => {
  it("are those of IEC 757:1983 in its order", () => {
    const published = csvRows(new URL("./testing/iec60757-colour-codes.csv", import.meta.url));
    expect(published).toHaveLength(15);
    expect(COLOUR_CODES.map((c) => [c.order, c.code, c.name])).toEqual(
      published.map((r) => [Number(r.order), r.code, r.colour?.replace(/ \(.*/, "")]),
    );
  });

  it("are found by code, in capitals only", () => {
    expect(colourOf("GY")?.name).toBe("grey");
    expect(colourOf("gy")).toBeNull();
    expect(colourOf("XX")).toBeNull();
  });
});

describe("splitColours", () => {
  it("reads base, then stripe, and green-and-yellow as one", () => {
    expect(codes("WHRD")).toEqual(["WH", "RD"]);
    expect(codes("RDWH")).toEqual(["RD", "WH"]);
    expect(codes("BU")).toEqual(["BU"]);
    expect(codes("GNYE")).toEqual(["GNYE"]);
    expect(codes("YEGN")).toEqual(["YE", "GN"]);
  });

  it("gives null for what is no colour", () => {
    for (const text of ["", "B", "XX", "WHXX", "WHWH", "WHRDBU", "WH RD"]) expect(codes(text)).toBeNull();
  });
});

describe("joining two colours", () => {
  it("keeps base and stripe as written", () => {
    expect(joinBaseStripe("WH", "RD")).toBe("WHRD");
    expect(joinBaseStripe("RD", "WH")).toBe("RDWH");
  });

  it("follows the table in the standard's way: red and blue is RDBU (IEC 60757:2021, 5.1)", () => {
    expect(joinInTableOrder("RD", "BU")).toBe("RDBU");
    expect(joinInTableOrder("BU", "RD")).toBe("RDBU");
  });

  it("gives back what splitting found, for every pair", () => {
    const two = COLOUR_CODES.filter((c) => c.code.length === 2).map((c) => c.code);
    let pairs = 0;
    for (const a of two) {
      for (const b of two) {
        if (a === b || (a === "GN" && b === "YE") || (a === "YE" && b === "GN")) {
          expect(() => joinBaseStripe(a, b)).toThrow(RangeError);
        } else {
          pairs++;
          expect(codes(joinBaseStripe(a, b))).toEqual([a, b]);
        }
      }
    }
    expect(pairs).toBe(14 * 13 - 2);
  });

  it("refuses what is no two-letter code", () => {
    expect(() => joinBaseStripe("GNYE", "RD")).toThrow('colour is "GNYE"');
    expect(() => joinInTableOrder("RD", "rd")).toThrow('colour is "rd"');
  });
});
