import { ENGLISH, loadAppWords } from "@pinwright/words/app";
import { describe, expect, it } from "vitest";
import { noteText } from "./note-text.ts";

describe("noteText", () => {
  it("says the server's codes in the reader's language and leaves what people wrote", async () => {
    const { history } = await loadAppWords("zh");
    expect(noteText(ENGLISH.history, "#example")).toBe("Example");
    expect(noteText(history, "#example")).toBe("示例");
    expect(noteText(history, "#from tidewatch")).toBe("由“tidewatch”新建");
    expect(noteText(history, "Move sw.1")).toBe("Move sw.1");
    expect(noteText(history, "#7 from Mara")).toBe("#7 from Mara");
  });
});
