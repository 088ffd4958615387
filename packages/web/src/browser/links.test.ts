import { describe, expect, it } from "vitest";
import { goTo, openBook, PATIENCE_MS } from "./testing/browser.ts";
import { selectedIds } from "./testing/drawing.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "/b/first-light";

describe("links between sections", { timeout: 2 * PATIENCE_MS }, () => {
  it("lead from a wire to its way on the layout and back, by number as well", async () => {
    const { page, complaints } = await app.look();
    await openBook(page, `${BOOK}/harnesses/hs.deck/cut`);
    await page.locator(".data-table .wire-no").first().click();
    const heading = page.getByRole("heading", { name: /^Wire \d+-\d+$/u });
    const name = (await heading.textContent()) ?? "";
    await page.getByRole("link", { name: "Light it up on the layout" }).click();
    await page.locator(".drawing .trace").first().waitFor({ state: "attached" });
    const lit = await page.locator(".drawing .trace").count();
    expect(selectedIds(page)[0]).toMatch(/\|hs\.deck\|/u);
    await page.locator(".layout-chosen").getByRole("heading", { name }).waitFor();
    await page.locator(".layout-chosen").getByRole("link", { name: "In Wiring" }).click();
    await heading.waitFor();

    const number = name.replace("Wire ", "");
    await goTo(page, `${BOOK}/layout?id=${number}`);
    await page.locator(".layout-chosen").getByRole("heading", { name }).waitFor();
    expect(await page.locator(".drawing .trace").count()).toBe(lit);
    expect(complaints).toEqual([]);
  });

  it("lead from the search box to everything that is drawn, and from there to its row and its findings", async () => {
    const { page, complaints } = await app.look();
    await openBook(page, `${BOOK}/findings`);
    const search = page.getByRole("banner").getByLabel("Search");
    for (const id of ["wp.joint", "ln.field-top", "sw.top"]) {
      await search.fill(id);
      await page.getByRole("option").filter({ hasText: id }).first().waitFor();
      await search.press("Enter");
      await page.waitForURL(new RegExp(`/layout/pf/under\\?id=${id}$`, "u"));
      await page.locator(".drawing .chosen").first().waitFor({ state: "attached" });
    }
    await page.locator(".layout-chosen").getByRole("link", { name: "In the table" }).click();
    await page.getByRole("gridcell", { name: "sw.top", exact: true }).waitFor();
    await goTo(page, `${BOOK}/layout?id=nothing.here`);
    await page.getByText("Nothing on any panel is called “nothing.here”.").waitFor();
    await goTo(page, `${BOOK}/findings?id=hs.deck`);
    const only = page.getByRole("button", { name: "Only about hs.deck" });
    await only.click();
    await only.waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
  });
});
