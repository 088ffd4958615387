import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const PASSWORD = "a long enough word";

async function signIn(page: Page, name: string, secret: string): Promise<void> {
  await page.getByLabel("Name").fill(name);
  await page.getByLabel("Password, or code on the floor").fill(secret);
  await page.getByRole("button", { name: "Sign in" }).click();
}

describe("accounts", { timeout: PATIENCE_MS }, () => {
  it("are set up, asked for from then on, and limited by their roles", async () => {
    const owner = await app.look();
    await owner.page.goto("/");
    await owner.page.getByRole("button", { name: "Menu" }).click();
    await owner.page.getByRole("menuitem", { name: "Set up accounts" }).click();
    await owner.page.getByLabel("Your name").fill("Mara");
    await owner.page.getByLabel("Password (at least 10 characters)").fill(PASSWORD);
    await owner.page.getByLabel("The password again").fill("another long word");
    await owner.page.getByRole("button", { name: "Make my account" }).click();
    await owner.page.getByText("The two passwords differ.").waitFor();
    await owner.page.getByLabel("The password again").fill(PASSWORD);
    await owner.page.getByRole("button", { name: "Make my account" }).click();
    await owner.page.waitForURL("**/people");
    await owner.page.getByRole("rowheader", { name: "Mara" }).waitFor();

    const form = owner.page.locator("section", { hasText: "New account" });
    await form.getByLabel("Name").fill("Ben");
    await form.getByLabel("Role").selectOption("builder");
    await form.getByLabel("Floor code (4 to 8 digits)").fill("4711");
    await form.getByRole("button", { name: "Make the account" }).click();
    await owner.page.getByText("Ben can sign in now.").waitFor();
    await owner.page.getByRole("row", { name: /Ben/u }).getByText("floor code").waitFor();

    const floor = await app.look({ screen: "tablet" });
    await floor.page.goto("/b/first-light/findings");
    await signIn(floor.page, "Ben", "1234");
    await floor.page.getByText("Name and password do not go together").waitFor();
    await signIn(floor.page, "Ben", "4711");
    await floor.page.locator(".finding").first().waitFor();
    // A builder looks at findings and makes sheets, but decides nothing.
    expect(await floor.page.getByRole("button", { name: "Accept …" }).count()).toBe(0);
    expect(await floor.page.getByRole("button", { name: "Undo" }).count()).toBe(0);
    await floor.page.goto("/people");
    await floor.page.getByText("Only the owner sees this page.").waitFor();
    await floor.page.goto("/");
    await floor.page.getByRole("link", { name: "First Light" }).waitFor();
    expect(await floor.page.getByText("New book").count()).toBe(0);

    await owner.page.getByRole("link", { name: "What was done to accounts" }).click();
    const refused = owner.page.getByRole("row", { name: /Ben was refused/u });
    await refused.waitFor();
    await owner.page.getByRole("row", { name: /Mara made an account Ben: builder/u }).waitFor();

    // A tablet that is lost is signed out from here, and notices by itself.
    await owner.page.goto("/people");
    await owner.page.getByRole("button", { name: "Where Ben is signed in" }).click();
    const sessions = owner.page.getByRole("dialog");
    expect(await accessFaults(owner.page)).toEqual([]);
    await sessions.getByRole("button", { name: /^End the session since/u }).click();
    await sessions.getByText("Nowhere.").waitFor();
    await sessions.getByRole("button", { name: "Close" }).click();
    await signIn(floor.page, "Ben", "4711");
    await floor.page.getByRole("link", { name: "First Light" }).waitFor();

    // Put away while signed in: the tablet notices by itself.
    await owner.page.getByRole("button", { name: "Change Ben" }).click();
    await owner.page.getByRole("switch").click();
    await owner.page.getByRole("button", { name: "Save" }).click();
    await owner.page.getByText("May not sign in").first().waitFor();
    await floor.page.getByRole("button", { name: "Sign in" }).waitFor();
    await signIn(floor.page, "Ben", "4711");
    await floor.page.getByText("Name and password do not go together").waitFor();

    await owner.page.getByRole("button", { name: "Menu" }).click();
    await owner.page.getByRole("menuitem", { name: "Sign out" }).click();
    await owner.page.getByRole("button", { name: "Sign in" }).waitFor();
    await signIn(owner.page, "mara", PASSWORD);
    await owner.page.getByRole("button", { name: "Menu" }).waitFor();
    expect([...owner.complaints, ...floor.complaints]).toEqual([]);
  });
});
