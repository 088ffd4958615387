import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { type Look, type LookOptions, look, openBrowser, PATIENCE_MS } from "./browser.ts";
import { type RunningApp, startApp } from "./start-app.ts";

/** One server and one browser for the tests of a file. */
export interface WithApp {
  readonly address: () => string;
  readonly look: (options?: LookOptions) => Promise<Look>;
}

/** Starts both before the tests of a file, and ends them after. */
export function withApp(): WithApp {
  let app: RunningApp | null = null;
  let browser: Browser | null = null;
  beforeAll(async () => {
    app = await startApp();
    browser = await openBrowser();
  }, PATIENCE_MS);
  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  }, PATIENCE_MS);
  const address = (): string => {
    if (app === null) throw new Error("The app did not start.");
    return app.address;
  };
  return {
    address,
    look: (options) => {
      if (browser === null) throw new Error("The browser did not start.");
      return look(browser, address(), options);
    },
  };
}
