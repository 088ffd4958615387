import { ALL_TABLES } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { nextFault } from "./fault-cells.ts";
import { sumOf } from "./figures.ts";
import { jsonOf, textOfJson } from "./machine-values.ts";
import { firstOffer, soughtOf, withOffer, wordsWith } from "./offers.ts";
import { tidy } from "./tidy.ts";
import { unitOf } from "./units.ts";

describe("tidy", () => {
  it("makes plain what a keyboard or a person adds, and leaves texts alone", () => {
    expect(tidy("number", " 012.50 ")).toBe("12.5");
    expect(tidy("number", "－１２．０")).toBe("-12");
    expect(tidy("number", "-0.0")).toBe("0");
    expect(tidy("number", "12,5 mm")).toBe("12,5 mm");
    expect(tidy("flag", "是")).toBe("yes");
    expect(tidy("flag", "No")).toBe("");
    expect(tidy("refs", " a   b ")).toBe("a b");
    expect(tidy("label", " １２ \r\nx")).toBe(" １２ \nx");
  });
});

describe("offers", () => {
  it("complete the last word of a list and the whole of anything else", () => {
    expect(soughtOf("refs", "opt.a op")).toBe("op");
    expect(withOffer("refs", "opt.a op", "opt.b")).toBe("opt.a opt.b");
    expect(soughtOf("ref", "left lane")).toBe("left lane");
    expect(withOffer("ref", "left", "sw.left")).toBe("sw.left");
  });

  it("are taken by Enter after typing unless the text is blank or one of them", () => {
    expect(firstOffer("sw", ["sw.a", "sw.b"])).toBe(0);
    expect(firstOffer("sw.b", ["sw.a", "sw.b"])).toBe(-1);
    expect(firstOffer("", ["sw.a"])).toBe(-1);
    expect(firstOffer("lampp", [])).toBe(-1);
  });

  it("of a choice are the words that have the text, those that begin with it first", () => {
    expect(wordsWith(["slot", "outline", "line"], "L")).toEqual(["line", "slot", "outline"]);
    expect(wordsWith(["slot", "rect"], "")).toEqual(["slot", "rect"]);
  });
});

describe("units", () => {
  it("are read from names", () => {
    expect([unitOf("x_mm"), unitOf("melting_a2s"), unitOf("ohm"), unitOf("label")]).toEqual([
      ...["mm", "A²s", "Ω", ""],
    ]);
  });

  it("are known for every column of numbers that has one", () => {
    const without = Object.values(ALL_TABLES).flatMap((table) =>
      Object.entries(table.columns).flatMap(([name, { kind }]) =>
        kind === "number" && unitOf(name) === "" ? [`${table.name}.${name}`] : [],
      ),
    );
    expect(without).toEqual([
      "panel_sizes.times",
      "fit_terms.times",
      "mechanism_steps.nominal",
      "mechanism_steps.min",
      "mechanism_steps.max",
      "fastener_types.clutch",
      "tests.nominal",
      "tests.min",
      "tests.max",
      "test_steps.nominal",
      "test_steps.min",
      "test_steps.max",
      "dimensions.nominal",
      "dimensions.minus",
      "dimensions.plus",
      "tooling.cost",
      "tooling.life",
      "bom.quantity",
      "shop_settings.value",
      "suppliers.order_cost",
      "suppliers.shipping",
      "suppliers.least_order",
      "prices.from_quantity",
      "prices.price",
      "prices.pack",
      "benches.rate",
      "currencies.rate",
      "ways.unit_cost",
      "ways.setup_cost",
      "run_prices.from_quantity",
      "run_prices.price",
      "run_prices.rate",
      "run_prices.pack",
      "order_lines.quantity",
      "order_lines.price",
      "movements.quantity",
      "sample_values.value",
      "instrument_measures.factor",
      "instrument_measures.min",
      "instrument_measures.max",
    ]);
  });
});

describe("the machine's values", () => {
  it("are JSON in the book and plain texts in the form", () => {
    expect(textOfJson('"Tidewatch"')).toBe("Tidewatch");
    expect(textOfJson("6.5")).toBe("6.5");
    expect(textOfJson("{broken")).toBe("{broken");
    expect(jsonOf("label", ' A "B" ')).toBe('"A \\"B\\""');
    expect(jsonOf("ball_mm", "28.0")).toBe("28");
    expect(jsonOf("ball_mm", "large")).toBe('"large"');
    expect(jsonOf("owner", "")).toBe("");
    expect(jsonOf("label", "")).toBe('""');
  });
});

describe("figures and faults", () => {
  it("sums numbers, two at least", () => {
    expect(sumOf([["0.1", "0.2"], ["x"]])).toBe("0.3");
    expect(sumOf([["5", "x"]])).toBe("");
  });

  it("goes from fault to fault and round the end", () => {
    const columns = [
      { name: "id", kind: "id" },
      { name: "x_mm", kind: "number" },
    ] as const;
    const rows = ["1", "2", "3"].map((id) => ({ id, cells: {} }));
    const fault = (column: string | null) => ({
      code: "cell-blank" as const,
      column,
      value: null,
      expected: "",
      nearest: null,
    });
    const faults = new Map([
      ["1", [fault("x_mm")]],
      ["3", [fault(null)]],
    ]);
    expect(nextFault(rows, columns, faults, { row: 0, col: 0 })).toEqual({ row: 0, col: 1 });
    expect(nextFault(rows, columns, faults, { row: 0, col: 1 })).toEqual({ row: 2, col: 0 });
    expect(nextFault(rows, columns, faults, { row: 2, col: 0 })).toEqual({ row: 0, col: 1 });
    expect(nextFault(rows, columns, new Map(), { row: 0, col: 0 })).toBeNull();
  });
});
