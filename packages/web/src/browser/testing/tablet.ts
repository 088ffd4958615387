import { createHash } from "node:crypto";
import {
  type Fact,
  type FactBody,
  factText,
  NO_FACT,
  ROUTES,
  statusSchema,
  TOKEN_HEADER,
} from "@pinwright/contract";

/** A tablet without a screen: it writes a stream and sends it. */
export class Tablet {
  readonly #address: string;
  readonly #stream: string;
  #seq = 0;
  #link = NO_FACT;
  readonly #waiting: Fact[] = [];

  constructor(address: string, stream: string) {
    this.#address = address;
    this.#stream = stream;
  }

  /** @param at ms since 1970 */
  write(at: number, body: FactBody): void {
    this.#seq += 1;
    const text = {
      ...{ stream: this.#stream, seq: this.#seq, before: this.#link },
      ...{ at: new Date(at).toISOString(), person: "local", body },
    };
    this.#link = createHash("sha256").update(factText(text)).digest("hex");
    this.#waiting.push({ ...text, hash: this.#link });
  }

  /** Sends what was written since. */
  async send(): Promise<void> {
    const status = await fetch(new URL(ROUTES.status.path, this.#address));
    const cookie = status.headers.get("set-cookie")?.split(";")[0] ?? "";
    const { token } = statusSchema.parse(await status.json());
    const response = await fetch(new URL(ROUTES.sendFacts.path, this.#address), {
      method: "POST",
      headers: { "content-type": "application/json", cookie, [TOKEN_HEADER]: token ?? "" },
      body: JSON.stringify({ facts: this.#waiting.splice(0) }),
    });
    const answer: unknown = await response.json();
    if (!response.ok || !JSON.stringify(answer).includes('"aside":[]'))
      throw new Error(`The facts were not taken: ${JSON.stringify(answer)}`);
  }
}
