import { describe, expect, it } from "vitest";
import { bookTerm } from "./book-terms.ts";

describe("terms that a book has in one language", () => {
  it("are said in the reader's where they are usual, with their numbers", () => {
    expect(bookTerm("en", "feeler gauge")).toBe("feeler gauge");
    expect(bookTerm("zh", "feeler gauge")).toBe("塞尺");
    expect(bookTerm("zh", "lamps 9–16")).toBe("灯 9–16");
    expect(bookTerm("zh", "12 V and 5 V")).toBe("12 V 与 5 V");
    expect(bookTerm("zh", "resettable j5")).toBe("自恢复保险 j5");
    expect(bookTerm("zh", "a gauge of one's own")).toBe("a gauge of one's own");
  });
});
