import { ROUTES, statusSchema, TOKEN_HEADER, type UnitKind } from "@pinwright/contract";

const PASSWORD = "a password of the load";
const MOST_UNITS = 1_000;

/** Name and floor code of a builder. */
export const builder = (i: number): { readonly name: string; readonly code: string } => ({
  name: `builder ${i}`,
  code: String(100_000 + i),
});

/** The owner's session, at the server itself. */
export class Owner {
  readonly #address: string;
  #headers: Readonly<Record<string, string>> = {};

  constructor(address: string) {
    this.#address = address;
  }

  async setUp(): Promise<void> {
    const { token } = statusSchema.parse(await (await fetch(`${this.#address}/api/status`)).json());
    this.#headers = { [TOKEN_HEADER]: token ?? "" };
    const made = await this.#send("/api/set-up", { name: "owner", password: PASSWORD });
    this.#headers = {
      cookie: made.headers.get("set-cookie")?.split(";")[0] ?? "",
      [TOKEN_HEADER]: statusSchema.parse(await made.json()).token ?? "",
    };
  }

  async addBuilder(i: number): Promise<void> {
    await this.#send("/api/people", { ...builder(i), role: "builder" });
  }

  /** Serial numbers. */
  async begin(what: UnitKind, type: string, count: number): Promise<readonly string[]> {
    const units: string[] = [];
    while (units.length < count) {
      const some = { book: "tidewatch", what, type, count: Math.min(MOST_UNITS, count - units.length) };
      const made = ROUTES.addUnits.answer.parse(await (await this.#send("/api/units", some)).json());
      units.push(...made.map(({ unit }) => unit));
    }
    return units;
  }

  async #send(path: string, body: unknown): Promise<Response> {
    const response = await fetch(`${this.#address}${path}`, {
      method: "POST",
      headers: { "content-type": "application/json", ...this.#headers },
      body: JSON.stringify(body),
    });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response;
  }
}
