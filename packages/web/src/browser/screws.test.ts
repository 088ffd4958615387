import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const SCREWS = "/b/first-light/screws";
const BOARDS = /^\d+\. Mount the boards$/u;

describe("screws", { timeout: PATIENCE_MS }, () => {
  it("shows a step as its card prints: its screws dark, earlier ones light, later ones not", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, SCREWS);
    // Without a step in the address it is the first that has screws on a panel.
    const now = page.locator(".sign.now");
    const before = page.locator(".sign.before");
    await now.first().waitFor();
    expect([await now.count(), await before.count()]).toEqual([8, 0]);
    await page.getByRole("heading", { name: /^\d+\. Mount bumper and saucer$/u }).waitFor();

    // By keyboard: name, Enter.
    await page.getByRole("combobox", { name: "Number or name of a step" }).fill("boards");
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: BOARDS }).waitFor();
    expect([await now.count(), await before.count()]).toEqual([12, 8]);
    expect(new URL(page.url()).searchParams.get("step")).toBe("st.boards");

    // The underside is seen as the builder sees it, or from the top.
    expect(await page.locator(".screw-map.under").count()).toBe(1);
    await page.getByRole("switch", { name: "Seen from the top" }).press(" ");
    await page.locator(".screw-map.top").waitFor();

    // A type is shown up everywhere, with its count.
    await page.getByRole("list", { name: "Types of screws" }).first().getByRole("button").first().click();
    await page.getByText(/^12 of this type on this side, 12 in the machine/u).waitFor();
    expect(await page.locator(".sign.sought").count()).toBe(12);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("tells what is known of a screw, from an address that anyone can be sent", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${SCREWS}?step=st.boards`);
    await page.locator(".sign.now").first().waitFor();
    const box = await page.locator(".sign.now .sign-ground").first().boundingBox();
    if (box === null) throw new Error("The screw is nowhere.");
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    await page.getByRole("heading", { name: "How it holds" }).waitFor();
    await page.getByRole("heading", { name: "How it is reached" }).waitFor();
    const id = new URL(page.url()).searchParams.get("id");
    expect(id).not.toBeNull();

    await openBook(page, `${SCREWS}?id=${id}`);
    await page.getByRole("heading", { name: "How it holds" }).waitFor();
    await page.getByRole("link", { name: /^\d+, screw \d+ of it$/u }).waitFor();
    await page.getByRole("button", { name: "Back to the step" }).click();
    await page.getByRole("heading", { name: BOARDS }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("plays the order of assembly through", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${SCREWS}?step=st.mechanisms`);
    const map = page.getByRole("application", { name: /^Screws of Deck/u });
    const step = page.getByRole("slider", { name: "Step" });
    const at = Number(await step.inputValue());
    const heading = (number: number) =>
      page.getByRole("heading", { name: new RegExp(`^${number}\\. `, "u") });
    await map.focus();
    await page.keyboard.press(".");
    await heading(at + 1).waitFor();
    await page.keyboard.press(",");
    await heading(at).waitFor();
    await page.getByRole("combobox", { name: "Speed" }).selectOption("8");
    await map.focus();
    await page.keyboard.press(" ");
    await page.getByRole("button", { name: "Pause (space)" }).waitFor();
    await expect
      .poll(async () => Number(await step.inputValue()), { timeout: PATIENCE_MS })
      .toBeGreaterThanOrEqual(at + 2);
    const last = Number(await step.getAttribute("max"));
    await step.fill(String(last));
    await heading(last).waitFor();
    await page.getByRole("button", { name: "Play (space)" }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("leads a builder from step to step at the bench, with ticks that the device keeps", async () => {
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await openBook(page, `${SCREWS}?step=st.mechanisms`);
    await page.getByRole("link", { name: "This step on the screen at the bench" }).tap();
    await page.getByRole("heading", { name: "Mount bumper and saucer" }).waitFor();
    const count = page.locator(".bench-count");
    const [, at = "", all = ""] = /Step (\d+) of (\d+?)0 of/u.exec((await count.textContent()) ?? "") ?? [];
    expect(page.url()).toMatch(new RegExp(`/bench/all/${at}$`, "u"));
    await page.getByText("8 ×").waitFor();
    for (const name of ["Back", "Done", "Done, next"]) {
      const box = await page.getByRole("button", { name, exact: true }).boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(64);
    }
    expect(await accessFaults(page)).toEqual([]);
    expect(await sidewaysPx(page)).toBe(0);
    await page.getByRole("button", { name: "Done, next" }).tap();
    await page.getByText(`Step ${Number(at) + 1} of ${all}`).waitFor();
    await page.getByText(`1 of ${all} ticked`).waitFor();
    await page.reload();
    await page.getByText(`1 of ${all} ticked`).waitFor();
    await page.getByRole("button", { name: "Back", exact: true }).tap();
    await page.getByText(`Step ${at} of ${all}`).waitFor();
    await page.getByRole("button", { name: "Done", exact: true, pressed: true }).tap();
    await page.getByText(`0 of ${all} ticked`).waitFor();

    // A station's own steps, of the plan of a usual day.
    await page.getByRole("combobox", { name: "Place" }).selectOption({ label: "Assembly bench" });
    await page.getByText(`Step 1 of ${all}`).waitFor();
    await page.getByRole("link", { name: "Leave the bench screen" }).tap();
    await page.locator(".screw-map, .step-list").first().waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
