import { execFileSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults } from "./testing/accessible.ts";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const PLUNGER = "/b/tidewatch/parts/outside?id=tu.plunger-12x62";
const PDF = Buffer.from("%PDF-1.4\n% plunger, revision B\n");

const upload = (page: Page, name: string, buffer: Buffer) =>
  page.locator("input[type=file]").setInputFiles({ name, mimeType: "application/octet-stream", buffer });

describe("outside work", { timeout: PATIENCE_MS }, () => {
  it("goes from a new revision over its drawing, sample and readings to the pack for the shop", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, PLUNGER);
    await page.getByText("The lot waits: no first article was asked for.").waitFor();

    await page.getByRole("button", { name: "New revision…" }).click();
    await page.getByRole("textbox", { name: "New revision" }).waitFor();
    expect(await page.getByRole("textbox", { name: "New revision" }).inputValue()).toBe("B");
    await page.getByRole("button", { name: "Make it the present revision" }).click();
    await page.getByText(/No file of revision B yet/u).waitFor();
    expect(await page.getByRole("button", { name: "Send out…" }).isDisabled()).toBe(true);

    // A file that is none is refused and said so; a drawing under a name of its own is attached with its hash.
    await upload(page, "notes.docx", Buffer.from("PK"));
    await page.getByText("notes.docx: only PDF, DXF, SVG and STEP files are taken.").waitFor();
    await upload(page, "Plunger (rev B).pdf", PDF);
    await page.getByText("Plunger-rev-B.pdf is attached.").waitFor();
    const row = page.getByRole("row", { name: /Plunger-rev-B\.pdf/u });
    await row.getByText("as attached").waitFor();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      row.getByRole("link", { name: "Download Plunger-rev-B.pdf" }).click(),
    ]);
    expect(Buffer.compare(await readFile(await download.path()), PDF)).toBe(0);
    // It is an ordinary edit: undone and done again.
    await page.getByRole("button", { name: "Undo" }).click();
    await row.waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Redo" }).click();
    await row.getByText("as attached").waitFor();

    await page.getByLabel("Made as").fill("turned, final steel");
    await page.getByRole("button", { name: "Ask for a sample" }).click();
    const sample = page.getByRole("article", { name: "sm.tu.plunger-12x62.b-1" });
    await sample.getByRole("button", { name: "It has come" }).click();
    const reading = (mark: number) => sample.getByRole("textbox", { name: `Reading of balloon ${mark}` });
    // Judged while it is typed: 11.9 0 −0.05.
    await reading(1).fill("11,91");
    await sample.getByText("out of tolerance", { exact: false }).first().waitFor();
    await reading(1).fill("11.88");
    await reading(1).press("Enter");
    await reading(2).pressSequentially("62.1");
    await reading(2).press("Enter");
    await reading(3).pressSequentially("4.25");
    await reading(3).press("Enter");
    await sample.getByRole("combobox", { name: /^Balloon 4/u }).selectOption("yes");
    await sample.getByText("4 good · 0 out · 0 open").waitFor();
    // Sent back needs a reason; then it is approved instead.
    await sample.getByRole("button", { name: "Send back" }).click();
    await sample.getByText(/^Say what has to change/u).waitFor();
    await sample.getByRole("button", { name: "Approve" }).click();
    await page.getByText("Nothing keeps the lot from being ordered.").waitFor();
    await page
      .getByRole("region", { name: "From the first try to the final part" })
      .getByText("turned, final steel")
      .waitFor();

    await page.getByRole("button", { name: "Send out…" }).click();
    await page.getByRole("textbox", { name: "Quantity of tu.plunger-12x62" }).fill("25");
    const [pack] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Make the pack" }).click(),
    ]);
    expect(pack.suggestedFilename()).toMatch(/^tidewatch-tu\.plunger-12x62-\d{4}-\d\d-\d\d\.zip$/u);
    const list = "import json,sys,zipfile;print(json.dumps(zipfile.ZipFile(sys.argv[1]).namelist()))";
    const names = execFileSync("python3", ["-c", list, await pack.path()], { encoding: "utf8" });
    expect(JSON.parse(names)).toEqual([
      "order-sheet.pdf",
      "tu.plunger-12x62_B/first-article.pdf",
      "tu.plunger-12x62_B/Plunger-rev-B.pdf",
      "contents.csv",
    ]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("lists what others make, and chooses some to be sent out together", async () => {
    const { page, context, complaints } = await app.look({ language: "zh", scheme: "dark" });
    await openBook(page, "/b/tidewatch/parts/outside?show=drawn");
    await page.getByRole("checkbox", { name: /br\.bumper-armature/u }).check();
    await page.getByRole("checkbox", { name: /br\.flipper-plate-left/u }).check();
    await page.getByRole("button", { name: "外发 2 种…" }).click();
    await page.getByRole("dialog").getByText("左拨板底板").waitFor();
    await page.keyboard.press("Escape");
    expect(await accessFaults(page)).toEqual([]);
    await openBook(page, "/b/tidewatch/parts/outside?id=md.flipper-bat");
    await page.getByRole("article").first().waitFor();
    expect(await accessFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
